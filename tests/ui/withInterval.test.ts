/** Where a line may end in a narrow cell: between an estimate and its interval, never within a number. */
import { h } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { PlanFields } from '../../src/islands/plan/PlanFields.tsx';
import { PlanResult } from '../../src/islands/plan/PlanResult.tsx';
import { createPlanPage } from '../../src/islands/plan/plan.state.ts';
import { builtPlan } from '../../src/site/planExample.ts';
import { site } from '../../src/site/site.ts';
import { GrowthKeptTable } from '../../src/ui/GrowthKeptTable.tsx';
import { WithInterval } from '../../src/ui/WithInterval.tsx';
import { pretendBrowser } from '../islands/pretendBrowser.ts';

afterEach(() => {
  vi.unstubAllGlobals();
});

/** Cells of a table's body, without the head of a row. */
const cellsOf = (html: string) => [...html.matchAll(/<td[^>]*>(.*?)<\/td>/gu)].map(([, cell]) => cell);
const UNBROKEN = /^<span class="unbroken">[^<]+<\/span>( <span class="unbroken">\([^<]+\)<\/span>)?$/u;

describe('an estimate with its interval', () => {
  it('is two parts that no line ends in; without one it is one', () => {
    expect(renderToString(h(WithInterval, { text: '81 % (69 to 91 %)' }))).toBe(
      '<span class="unbroken">81 %</span> <span class="unbroken">(69 to 91 %)</span>',
    );
    expect(renderToString(h(WithInterval, { text: '0' }))).toBe('<span class="unbroken">0</span>');
  });

  it('is so in both tables of growth kept', () => {
    pretendBrowser();
    const state = createPlanPage(builtPlan, '/data/arms.csv');
    const answer = builtPlan.answers.A;
    if (!answer) throw new Error('expected a first plan');
    for (const html of [
      renderToString(h(GrowthKeptTable, { analysis: site.analysis })),
      renderToString(h(PlanResult, { state, name: 'A', answer })),
    ]) {
      const cells = cellsOf(html);
      expect(cells.length).toBeGreaterThan(5);
      for (const cell of cells) expect(cell).toMatch(UNBROKEN);
    }
  });
});

describe('the designs to choose from', () => {
  it('are short words, since a narrow list cuts long ones off; what they mean stands below', () => {
    pretendBrowser();
    const state = createPlanPage(builtPlan, '/data/arms.csv');
    const plan = builtPlan.answers.A?.plan;
    if (!plan) throw new Error('expected a first plan');
    const html = renderToString(h(PlanFields, { state, name: 'A', plan: { ...plan, design: 'within-person' } }));
    const [design] = html.split('</select>');
    expect([...design.matchAll(/<option[^>]*>([^<]*)</gu)].map(([, words]) => words)).toEqual([
      'parallel',
      'within-person',
    ]);
    expect(html).toContain('id="A-design-help">The same people in every arm, on other limbs.<');
  });
});
