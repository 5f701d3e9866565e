/** What the text of each guided step promises, read as a reader reads it and held to the analyses on both sides of its change. */
import { expect } from 'vitest';
import type { Arm } from '../../../src/evidence/schema.ts';
import { CURVE_WORDS } from '../../../src/figures/settingsWords.ts';
import { followedBand } from '../../../src/islands/evidence/guideRings.ts';
import { bandOf, listBands } from '../../../src/model/bands.ts';
import type { Analysis, Band } from '../../../src/model/result.ts';
import { LOAD_NAMES } from '../../../src/practice/loadNames.ts';
import type { Told } from './guideThrough.ts';

const rowsOf = ({ fitted, unfitted = [] }: Band) => [...fitted, ...unfitted];
const allRows = ({ bands }: Analysis) => listBands(bands).flatMap(([, band]) => rowsOf(band));
const linesOf = (rows: readonly { readonly line: number }[]) => rows.map(({ line }) => line).sort((a, b) => a - b);
const percentOf = (share: number) => `${(100 * share).toFixed(0)}\u00a0%`;
const most = <Row>(rows: readonly Row[], by: (row: Row) => number) => Math.max(...rows.map(by));

function groupWeights({ fitted }: Band): ReadonlyMap<string, number> {
  const sums = new Map<string, number>();
  for (const { study, weight } of fitted) sums.set(study, (sums.get(study) ?? 0) + weight);
  return sums;
}

/** Name of the study whose rows are ringed. */
function ringedStudy({ rings, was, name }: Told): string {
  expect(rings.band).toBe(name);
  const studies = new Set(rings.spots.map(({ words }) => words.replace(/^the study, (.*) at reserve .*$/u, '$1')));
  expect(studies.size).toBe(1);
  const [study] = [...studies];
  expect(was.fitted.some((row) => row.study === study)).toBe(true);
  return study;
}

const leftOut = ({ before, after }: Told) =>
  [...new Set(allRows(before).map(({ study }) => study))].filter((study) =>
    allRows(after).every((row) => row.study !== study),
  );

/** What each step says, held to what it does. */
export const CHECKS: Readonly<Record<string, (told: Told) => void>> = {
  'Count every row alike': ({ lesson, rings, was, after, is }) => {
    const heaviest = was.fitted.filter(({ weight }) => weight === most(was.fitted, (row) => row.weight));
    expect(heaviest.map(({ reserve }) => reserve)).toContain(rings.spots[0].x);
    if (is) expect(lesson).toMatch(/^The marks are now of one size/u);
    for (const [, { fitted }] of listBands(after.bands))
      for (const { weight } of fitted) expect(weight * fitted.length).toBeCloseTo(1, 9);
  },
  'Count by precision': ({ lesson, rings, was, is }) => {
    const exact = was.fitted.filter(
      ({ standardError }) => -standardError === most(was.fitted, (r) => -r.standardError),
    );
    expect(exact.map(({ reserve }) => reserve)).toContain(rings.spots[0].x);
    if (!is) return;
    const ratios = is.fitted.map((row) => row.weight / (was.fitted.find((r) => r.line === row.line)?.weight ?? 0));
    const grew = Math.max(...ratios) > 1.1;
    expect(lesson).toMatch(grew ? /^Look at which marks grew .*most exact rows now decide/u : /hardly changed/u);
  },
  'Take out the study that counts most': (told) => {
    expect(told.question).toMatch(/^Rows count by precision\. Ringed is the study that counts most then\./u);
    expect(told.before.settings.weighting).toBe('precision');
    const weights = groupWeights(told.was);
    const study = ringedStudy(told);
    expect(weights.get(study)).toBeCloseTo(Math.max(...weights.values()), 9);
    expect(leftOut(told)).toEqual([study]);
  },
  'Let studies differ': ({ question, lesson, rings, before, after, was, is }) => {
    expect([before.settings.weighting, after.settings.weighting]).toEqual(['precision', 'mixed']);
    expect(question).toMatch(/^Rows count by precision still\. .* asks by how much studies differ/u);
    expect(rings.spots[0].x).toBe(was.studiedReserve?.high);
    if (!is) return;
    const differ = (is.tau2 ?? Number.NaN) + (is.omega2 ?? Number.NaN) > 0;
    expect(lesson).toMatch(differ ? /differ by more than their own error/u : /differ by no more than their own error/u);
    const shares = [is, was].map(({ fitted }) => percentOf(most(fitted, ({ weight }) => weight)));
    if (differ) expect(lesson).toContain(`has ${shares[0]} of the weight, before ${shares[1]}.`);
  },
  'Straighten or bend': ({ question, lesson, rings, was, is }) => {
    expect(rings.spots[0].x).toBe(0);
    const [, bent, verb, to, from] =
      /first; the (.+) (need|does) not\. Now the (.+) takes the place of the (.+?)\. How/u.exec(question) ?? [];
    expect(from).toBe(CURVE_WORDS[was.curve]);
    if (is) expect(to).toBe(CURVE_WORDS[is.curve]);
    // One of them is a line, and what is said of the other is said of what is drawn.
    expect([from, to].filter((one) => one !== CURVE_WORDS.line)).toEqual([bent]);
    expect(verb).toBe(bent === CURVE_WORDS.log ? 'does' : 'need');
    const named = Object.values(CURVE_WORDS).filter((word) => `${question} ${lesson}`.includes(word));
    expect(named.sort()).toEqual([CURVE_WORDS.line, bent].sort());
    if (is) expect(lesson).toContain(bent);
    expect(lesson.includes('finds it')).toBe(is !== null && bent === CURVE_WORDS.flexible);
  },
  'Move the split': ({ question, rings, before, after }) => {
    const [, low, high, atMost, to] =
      /lifted at ([\d.]+) to below ([\d.]+)\u00a0% of 1RM, (\d+) rows at most\. .* moved up to ([\d.]+)\u00a0%/u.exec(
        question,
      ) ?? [];
    expect([low, high, to].map(Number)).toEqual([before.settings.split, after.settings.split, after.settings.split]);
    expect(Number(to)).toBeGreaterThan(Number(low));
    const named = rowsOf(bandOf(before, 'heavy')).filter(
      ({ load }) => Number(low) <= Number(load) && Number(load) < Number(high),
    );
    const wasLight = new Set(linesOf(rowsOf(bandOf(before, 'light'))));
    const becameLight = rowsOf(bandOf(after, 'light')).filter(({ line }) => !wasLight.has(line));
    expect(linesOf(becameLight)).toEqual(linesOf(named));
    expect(rings.band).toBe('heavy');
    expect(rings.spots).toHaveLength(Math.min(Number(atMost), named.length));
    for (const { x } of rings.spots) expect(named.map(({ reserve }) => reserve)).toContain(x);
  },
  'Leave out one study': (told) => {
    const start = told.was.curvePoints[0].estimate;
    const near = told.was.fitted.filter(({ reserve }) => reserve < 1);
    const furthest = most(near, ({ effect }) => Math.abs(effect - start));
    const study = ringedStudy(told);
    expect(near.filter((row) => Math.abs(row.effect - start) === furthest).map((row) => row.study)).toContain(study);
    expect(leftOut(told)).toEqual([study]);
  },
  'Doubt the reserve': ({ question, rings, before, after, was, arms }) => {
    expect(rings.spots[0].x).toBe(was.target.point);
    const said = { reported: 'by asking', 'velocity-loss': 'by the slowing of the bar' };
    const named = Object.entries(said).flatMap(([basis, words]) => (question.includes(words) ? [basis] : []));
    expect(named.length).toBeGreaterThan(0);
    expect(named).toEqual(after.settings.include.reserveBasis);
    const basisOf = (line: number) => arms.find((arm) => arm.line === line)?.reserve_basis ?? 'not said';
    // Nothing comes back that the reader had filtered out, and nothing goes that is named.
    const kept = allRows(before).filter(({ line }) => named.includes(basisOf(line)));
    expect(linesOf(allRows(after))).toEqual(linesOf(kept));
  },
};

/** Why a step says nothing, held to the analysis that it begins with. */
export function checkRefusal(whyNot: string, before: Analysis, arms: readonly Arm[]): void {
  const { split, include } = before.settings;
  const followed = followedBand(before);
  const loads = followed ? LOAD_NAMES[followed.name] : 'none';
  const reserves = (followed?.band.fitted ?? []).map(({ reserve }) => reserve);
  const basesOf = (lines: readonly { readonly line: number }[]) =>
    lines.flatMap(({ line }) => arms.find((arm) => arm.line === line)?.reserve_basis ?? []);
  const measured = (basis: string) => ['reported', 'velocity-loss'].includes(basis);
  const [, low, high] = /lifted at ([\d.]+) to below ([\d.]+)\u00a0%/u.exec(whyNot) ?? [];
  const between = ({ load }: { readonly load: number | null }) =>
    Number(low) <= Number(load) && Number(load) < Number(high);
  const all = arms.filter(({ outcome }) => outcome !== 'fatigue');
  const reasons: readonly (readonly [RegExp, () => boolean])[] = [
    [/^There is no target here to follow/u, () => followed === null],
    [/^Loads are fitted together here/u, () => split === null],
    [/^The split stands as high as it goes\.$/u, () => Number(split) >= 85],
    [/^No row that counts here was lifted/u, () => Number(low) === split && !allRows(before).some(between)],
    [new RegExp(`^Only two different reserves were studied with ${loads}:`, 'u'), () => new Set(reserves).size === 2],
    [new RegExp(`^No row that is fitted was near failure with ${loads},`, 'u'), () => Math.min(...reserves) >= 1],
    [/^No study of this table says that it measured/u, () => !basesOf(all).some(measured)],
    [/^The filter of how reserve was known leaves no study/u, () => !basesOf(allRows(before)).some(measured)],
    [/^Every study that says how it knew reserve/u, () => basesOf(allRows(before)).every(measured)],
    [
      /^Only studies that measured reserve count already/u,
      () => include.reserveBasis.length > 0 && include.reserveBasis.every(measured),
    ],
  ];
  const given = reasons.filter(([words]) => words.test(whyNot));
  expect(given, whyNot).toHaveLength(1);
  expect(given[0][1](), whyNot).toBe(true);
}
