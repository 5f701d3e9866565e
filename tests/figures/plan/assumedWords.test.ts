/** What is assumed of covariates is said wherever a plan is: in its protocol, its files and beside its scripts. */
import { readFileSync } from 'node:fs';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { readArms } from '../../../src/evidence/table.ts';
import { listAdjusted } from '../../../src/figures/plan/assumedWords.ts';
import { stateAssumed, writePlanCsv, writePlanJson } from '../../../src/figures/plan/planFiles.ts';
import { writeProtocol } from '../../../src/figures/plan/protocol.ts';
import { nameAdjustment } from '../../../src/figures/settingsWords.ts';
import { SETTING_CONTROLS } from '../../../src/islands/evidence/controlList.ts';
import { answerPlan } from '../../../src/model/plan/planAnswer.ts';
import { planStudy } from '../../../src/model/plan/plannedStudy.ts';
import { openPlanning } from '../../../src/model/plan/planningBase.ts';
import { describePlanning } from '../../../src/model/plan/planningFacts.ts';
import { COVARIATES } from '../../../src/model/selection.ts';
import { ADJUSTMENTS, type Adjustment, defaultSettings } from '../../../src/model/settings.ts';

const { arms } = readArms(readFileSync(new URL('../../../data/arms.csv', import.meta.url), 'utf8'), 'arms.csv');
const context = { table: 'arms.csv', dataVersion: '1', isDemonstration: true, address: '' };
const heavy = planStudy(
  'parallel',
  [0, 10].map((reserve) => ({ load: 'heavy' as const, reserve, people: 20 })),
);

function prepare(adjust: readonly Adjustment[], plan = heavy) {
  const settings = { ...defaultSettings, adjust: [...adjust] };
  const planning = openPlanning(arms, settings);
  const answer = answerPlan(planning, plan);
  const { assumptions } = answer.expectation;
  if (!assumptions) throw new Error(answer.expectation.problems.join());
  return { settings, answer, assumptions, facts: describePlanning(planning, arms) };
}

describe('covariates that are adjusted for', () => {
  const { settings, answer, assumptions, facts } = prepare(['training-status', 'weekly-sets']);
  const said = listAdjusted(assumptions, heavy, settings);

  it('are told by the value that the planned arms are given', () => {
    const usual = assumptions.bands.find(({ band }) => band === 'heavy')?.trainingStatus;
    expect(said).toEqual([
      `training status “${usual === 'trained' ? 'trained before' : 'not trained before'}” (as at least half of the rows there)`,
      `weekly sets ${(assumptions.sets ?? 0) * (assumptions.sessionsPerWeek ?? 0)} (${assumptions.sets} in a session times ${assumptions.sessionsPerWeek} sessions a week, the medians here)`,
    ]);
  });

  it('stand in the protocol, in JSON, in CSV and over the scripts', () => {
    const protocol = writeProtocol(facts, answer, context);
    for (const phrase of said) expect(protocol).toContain(phrase);
    expect(protocol).toContain('Adjusted for: training status, weekly sets;');
    const named = [{ name: 'A' as const, answer }];
    expect(stateAssumed(named, context, settings).join('\n')).toContain(said.join('; '));
    expect(JSON.parse(writePlanJson(facts, named, context).text).adjustedFor).toEqual([{ plan: 'A', assumed: said }]);
    const { data } = Papa.parse<Record<string, string>>(writePlanCsv(facts, named, context).text.trim(), {
      header: true,
    });
    for (const { loads, training_status: status, weekly_sets: sets } of data) {
      expect(status).toBe(assumptions.bands.find(({ band }) => band === loads)?.trainingStatus);
      expect(Number(sets)).toBe((assumptions.sets ?? 0) * (assumptions.sessionsPerWeek ?? 0));
    }
  });

  it('of loads tell the median that an arm without a per cent is given, and weeks whose they are', () => {
    const mixed = { ...heavy, arms: [heavy.arms[0], { load: 75, reserve: 2, people: 20 }], weeks: 12 };
    const adjusted = prepare(['load', 'weeks'], mixed);
    const median = adjusted.assumptions.bands.find(({ band }) => band === 'heavy')?.load;
    expect(listAdjusted(adjusted.assumptions, mixed, adjusted.settings)).toEqual([
      `load ${median}\u00a0% of 1RM for heavy loads (the median of the rows there), where an arm says no per cent`,
      'weeks 12 (as planned)',
    ]);
    const given = { ...mixed, arms: [mixed.arms[1]], weeks: null };
    expect(listAdjusted(adjusted.assumptions, given, adjusted.settings)[0]).toBe('load as the arms say');
  });

  it('are not told where nothing is adjusted for, or no arm is planned', () => {
    const plain = prepare([]);
    expect(listAdjusted(plain.assumptions, heavy, plain.settings)).toEqual([]);
    expect(writeProtocol(plain.facts, plain.answer, context)).not.toMatch(/is adjusted|training status/u);
    expect(writePlanJson(plain.facts, [{ name: 'A', answer: plain.answer }], context).text).not.toContain(
      'adjustedFor',
    );
    expect(writePlanCsv(plain.facts, [{ name: 'A', answer: plain.answer }], context).text).not.toMatch(/weekly_sets/u);
    expect(listAdjusted(assumptions, { ...heavy, arms: [] }, settings)).toEqual([]);
  });

  it('are called as the menu and the reasons for rows left out call them', () => {
    for (const name of ADJUSTMENTS) {
      const { name: column, what = column } = COVARIATES[name];
      expect(nameAdjustment(name)).toBe(what);
    }
    const menu = SETTING_CONTROLS.find(({ id }) => id === 'adjust');
    expect(menu?.kind === 'choice' && menu.options.map(({ label }) => label)).toEqual(
      expect.arrayContaining(ADJUSTMENTS.map(nameAdjustment)),
    );
  });
});
