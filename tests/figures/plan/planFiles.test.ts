/**
 * What is taken home of plans: text, JSON and CSV say what was assumed and that invented studies are; the scripts, really
 * run in R and Python, give the site's numbers again. Where a language is not installed that is said in one line.
 */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Papa from 'papaparse';
import { afterAll, describe, expect, it } from 'vitest';
import { readArms } from '../../../src/evidence/table.ts';
import {
  type FileContext,
  type NamedAnswer,
  writePlanCsv,
  writePlanJson,
} from '../../../src/figures/plan/planFiles.ts';
import { writePlanScripts } from '../../../src/figures/plan/planScripts.ts';
import { formatExpected, PLAN_NAMES } from '../../../src/figures/plan/planWords.ts';
import { writeProtocol, writeProtocols } from '../../../src/figures/plan/protocol.ts';
import { answerPlan } from '../../../src/model/plan/planAnswer.ts';
import { type PlannedStudy, planStudy } from '../../../src/model/plan/plannedStudy.ts';
import { openPlanning } from '../../../src/model/plan/planningBase.ts';
import { describePlanning } from '../../../src/model/plan/planningFacts.ts';
import { type SettingsInput, settingsSchema } from '../../../src/model/settings.ts';
import { LANGUAGES, readPrinted, runTogether, steps } from '../../support/takeHomeScripts.ts';

const { arms } = readArms(readFileSync(new URL('../../../data/arms.csv', import.meta.url), 'utf8'), 'arms.csv');
const real = arms.map((arm) => ({ ...arm, note: null }));
const folder = mkdtempSync(join(tmpdir(), 'plan-scripts-'));
afterAll(() => rmSync(folder, { recursive: true }));

const read = (name: string) => readFileSync(new URL(`../../../src/figures/plan/${name}`, import.meta.url), 'utf8');
const own = { r: read('plan.R'), python: read('plan.py') };

const arm = (load: 'light' | 'heavy' | 'all' | number, reserve: number, people: number) => ({ load, reserve, people });
const PLANS: readonly PlannedStudy[] = [
  planStudy('parallel', [arm('light', 0, 20), arm('light', 2, 20)]),
  planStudy('within-person', [arm(85, 3, 15), arm(75, 0, 15), arm('light', 4, 15)]),
  { ...planStudy('parallel', [arm('heavy', 4.5, 60)]), weeks: 20, coefficientOfVariation: 0.2, correlation: 0.8 },
];

function prepare(input: SettingsInput, plans = PLANS, rows = arms) {
  const planning = openPlanning(rows, settingsSchema.parse(input));
  const facts = describePlanning(planning, rows);
  const answers = plans.map((plan, i): NamedAnswer => ({ name: PLAN_NAMES[i], answer: answerPlan(planning, plan) }));
  const context: FileContext = {
    table: 'arms.csv',
    dataVersion: '12345678',
    isDemonstration: facts.isDemonstration,
    address: 'https://shy.example/plan/?a=x',
  };
  return { planning, facts, answers, context };
}
const first = prepare({});

describe('the text for a protocol', () => {
  const text = writeProtocol(first.facts, first.answers[0].answer, first.context);

  it('says what is planned, what was assumed, from which table, what is expected and what is not claimed', () => {
    expect(text).toMatch(/^DEMONSTRATION: the studies behind these numbers are invented/u);
    expect(text).toContain('a parallel study (other people in every arm)');
    expect(text).toContain('light loads at 0 in reserve, 20 people; light loads at 2 in reserve, 20 people');
    expect(text).toContain('In all 40 people');
    expect(text).toMatch(
      /standard deviation before training [\d.]+\s% of the mean \(median of \d+ rows of \d+ studies/u,
    );
    expect(text).toMatch(/τ² [\d.e−]+, ω² [\d.e−]+/u);
    expect(text).toContain('arms.csv, version 12345678');
    expect(text).toContain('Curve: flexible curve');
    const { before, after } = first.answers[0].answer.expectation.bands[0];
    expect(text).toContain(`${formatExpected(before)} today`);
    expect(text).toContain(`Expected with the study: ${after && formatExpected(after)}`);
    expect(text).toMatch(/With people without end: [\d.]+ wide/u);
    expect(text).toMatch(/Not claimed: .*ethics or safety.*review boards come first/u);
    expect(text).toContain('https://shy.example/plan/?a=x');
    expect(text).not.toMatch(/undefined|null|NaN/u);
  });

  it('of studies that are not invented does not say that they are', () => {
    const { facts, answers, context } = prepare({}, PLANS, real);
    expect(writeProtocols(facts, answers, context).text).not.toMatch(/demonstration|invented/iu);
    expect(writePlanCsv(facts, answers, context).text).not.toMatch(/invented/u);
    expect(writePlanJson(facts, answers, context).text).not.toMatch(/invented/u);
  });

  it('of a plan that cannot be worked out says why', () => {
    const { facts, answers, context } = prepare({}, [planStudy('parallel', [arm('all', 0, 2)])]);
    expect(writeProtocols(facts, answers, context).text).toMatch(
      /This plan cannot be worked out: arm 1: expected one of the bands.*received all; arm 1: expected a whole number of people/u,
    );
  });
});

describe('the numbers as files', () => {
  it('are in JSON all that the page shows, and say that they are invented', () => {
    const { name, text } = writePlanJson(first.facts, first.answers, first.context);
    const content = JSON.parse(text);
    expect(name).toBe('demonstration-plans-12345678.json');
    expect(content.demonstration).toMatch(/invented/u);
    expect(content.plans).toEqual(
      JSON.parse(JSON.stringify(first.answers.map((one) => ({ name: one.name, ...one.answer })))),
    );
    expect(content.settings).toEqual(first.facts.settings);
  });

  it('are in CSV a line a plan and band, with all digits', () => {
    const { data } = Papa.parse<Record<string, string>>(
      writePlanCsv(first.facts, first.answers, first.context).text.trim(),
      {
        header: true,
      },
    );
    expect(data.map(({ plan, loads }) => `${plan} ${loads}`)).toEqual(
      ['A', 'B', 'C'].flatMap((plan) => ['light', 'heavy'].map((loads) => `${plan} ${loads}`)),
    );
    const told = first.answers[1].answer.expectation.bands[1];
    expect(Number(data[3].expected_width)).toBe(told.after?.width);
    expect(Number(data[3].kept_at_2_expected_low)).toBe(told.kept[1].after.low);
    expect(data.every(({ note }) => note === 'invented for demonstration')).toBe(true);
  });
});

/** Six digits: both climb to the maximum until steps are rounding. */
const SAME = 1e-6;
const CASES: readonly (readonly [string, SettingsInput])[] = [
  ['the defaults', {}],
  ['a spline that is adjusted for weeks and load', { curve: 'spline', adjust: ['weeks', 'load'] }],
  ['a line through all loads, by precision', { curve: 'line', split: null, weighting: 'precision' }],
  [
    'a parabola of standardised changes, all rows alike',
    { curve: 'quadratic', metric: 'standardised', weighting: 'equal' },
  ],
  [
    'few studies, no upper end',
    { include: { withoutStudies: [...new Set(arms.map(({ study }) => study))].slice(0, 20) } },
  ],
];
/** The defaults are tried with all plans, others with the one that has arms in both bands. */
const plansFor = (settings: SettingsInput) => {
  if (settings.split === null) return [planStudy('parallel', [arm('all', 0, 20), arm(60, 4, 30)])];
  return Object.keys(settings).length === 0 ? PLANS : PLANS.slice(1, 2);
};

describe('the scripts', () => {
  const prepared = CASES.map(([, settings]) => prepare(settings, plansFor(settings)));
  const scripts = prepared.map(({ planning, answers, context }) =>
    writePlanScripts(planning, answers, context, steps, own),
  );

  it('have numbers to compare, of plans with a width and of others', () => {
    const widths = prepared.flatMap(({ answers }) =>
      answers.flatMap(({ answer }) =>
        answer.expectation.bands.filter((band) => band.arms > 0).map(({ after }) => after?.width ?? null),
      ),
    );
    expect(widths.filter((width) => width !== null).length).toBeGreaterThan(5);
    expect(widths.filter((width) => width === null).length).toBeGreaterThan(0);
  });

  it.each(LANGUAGES)('print the site’s numbers to 6 digits in $name', (language) => {
    const texts = scripts.map((files) => files.find(({ name }) => name.endsWith(language.ending))?.text ?? '');
    for (const text of texts) expect(text).toMatch(/^# Shy of Failure[\s\S]*DEMONSTRATION/u);
    if (language.command === null) {
      console.log(`LEFT OUT: ${language.name} is not installed here, so its scripts were only written`);
      return;
    }
    const printed = runTogether(language, texts, folder);
    printed.forEach((text, i) => {
      const numbers = readPrinted(text);
      const told = prepared[i].answers.flatMap(({ answer }) =>
        answer.expectation.bands.filter(({ arms: count, after }) => count > 0 && after !== null),
      );
      expect(numbers.length, CASES[i][0]).toBeGreaterThanOrEqual(2 * told.length);
      const widths = numbers.filter(({ what }) => what.endsWith('expected width')).map(({ site }) => site);
      expect(widths.map((one) => one.toPrecision(6))).toEqual(
        told.flatMap(({ after }) => (after?.width == null ? [] : [after.width.toPrecision(6)])),
      );
      for (const { what, here, site } of numbers)
        expect(Math.abs(here - site), `${CASES[i][0]}, ${what}: here ${here}, site ${site}`).toBeLessThanOrEqual(
          SAME * Math.abs(site || 1),
        );
    });
  });

  it('say so where no plan can be worked out', () => {
    const { planning, answers, context } = prepare({}, [planStudy('parallel', [])]);
    const files = writePlanScripts(planning, answers, context, steps, own);
    for (const language of LANGUAGES.filter(({ command }) => command !== null)) {
      const text = files.find(({ name }) => name.endsWith(language.ending))?.text ?? '';
      expect(runTogether(language, [text], folder).join('')).toContain('no plan could be worked out');
    }
  });
});
