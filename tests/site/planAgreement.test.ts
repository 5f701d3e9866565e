/** The agreement of what is foretold with simulation, as Methods tells it, against the file and the model's own words. */
import { readFileSync } from 'node:fs';
import { h } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { describe, expect, it, vi } from 'vitest';
import { BestPlacement } from '../../src/islands/plan/BestPlacement.tsx';
import { createPlanPage } from '../../src/islands/plan/plan.state.ts';
import { planAgreement } from '../../src/site/planAgreement.ts';
import { builtPlan } from '../../src/site/planExample.ts';
import { pretendBrowser } from '../islands/pretendBrowser.ts';

const read = (path: string) => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
const {
  results,
}: { readonly results: readonly { readonly table: string; readonly band: string; readonly miss: number | null }[] } =
  JSON.parse(read('data/plan-agreement.json'));

describe('the agreement that Methods shows', () => {
  it('counts every plan once, and has the largest miss of each table', () => {
    const { rows, plans, both } = planAgreement;
    expect(rows.reduce((sum, row) => sum + row.plans, 0)).toBe(results.length);
    expect(plans).toBe(results.length);
    expect(both).toBe(results.filter(({ miss }) => miss !== null).length);
    const missOf = (table: string, band: string) =>
      Math.max(...results.flatMap((one) => (one.table === table && one.band === band ? Math.abs(one.miss ?? 0) : [])));
    const light = rows.find(({ name }) => name === 'invented table, light loads');
    expect(light?.most).toBe(`${(100 * missOf('shipped', 'light')).toFixed(1)}\u00a0%`);
    expect(
      rows.filter(({ both: widths }) => widths === 0).map(({ most, usual, error }) => [most, usual, error]),
    ).toEqual([['none', 'none', 'none']]);
  });

  it('is what the page that plans says of close placements', () => {
    const { both, most } = planAgreement;
    expect(builtPlan.agreement).toEqual({ both, most });
    pretendBrowser();
    const page = renderToString(h(BestPlacement, { state: createPlanPage(builtPlan, '/data/arms.csv') }));
    expect(page.replaceAll('\u00a0', ' ')).toContain(
      `of ${both} planned studies that were simulated too, none had an expected width that was off by more than ${most.replace('\u00a0', ' ')}.`,
    );
    vi.unstubAllGlobals();
  });

  it('is what the words of the model say', () => {
    const { plans, both, most, usual, error } = planAgreement;
    const words = read('src/model/README.md').replaceAll('\u00a0', ' ');
    for (const said of [
      `Of ${plans} there are ${both} in which both have a width: off by ${most} at most, by ${usual} in 19 of 20`,
      `error is ${error} at most`,
    ])
      expect(words).toContain(said.replaceAll('\u00a0', ' '));
  });
});
