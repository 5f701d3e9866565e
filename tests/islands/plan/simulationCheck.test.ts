/** What a plan's simulation came to is shown beside what is expected of it, and where that is not known, alone. */
import { signal } from '@preact/signals';
import { h } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { expect, it } from 'vitest';
import type { PlanState } from '../../../src/islands/plan/plan.state.ts';
import { defaultPlans } from '../../../src/islands/plan/plans.ts';
import { SimulationCheck } from '../../../src/islands/plan/SimulationCheck.tsx';
import { expectPlan } from '../../../src/model/plan/expectPlan.ts';
import { openPlanning } from '../../../src/model/plan/planningBase.ts';
import { simulatePlan } from '../../../src/model/plan/simulatePlan.ts';
import { defaultSettings } from '../../../src/model/settings.ts';
import { shippedArms } from '../../support/shippedFigures.ts';

const plans = defaultPlans(defaultSettings);
const planning = openPlanning(shippedArms, defaultSettings);

function show(answers: Record<string, unknown>): string {
  if (!plans.A) throw new Error('expected a plan A');
  const result = simulatePlan(planning, plans.A, 20, 1);
  const state = {
    simulation: { asked: signal({ request: { name: 'A' }, result, problem: null }), share: signal(1) },
    answers: { answers: signal(answers) },
    page: signal({ plans }),
  };
  const html = renderToString(h(SimulationCheck, { state: state as unknown as PlanState }));
  return html.replaceAll(/<[^>]*>/gu, ' ').replaceAll(/\s+/gu, ' ');
}

it('a simulation is held against what the formula expects', () => {
  if (!plans.A) throw new Error('expected a plan A');
  const said = show({ A: { expectation: expectPlan(planning, plans.A) } });
  expect(said).toMatch(/plan A: expected \d\.\d\d wide, simulated \d\.\d\d \(give or take .*Another whole number:/u);
});

it('a simulation of a plan of which nothing is known to be expected is told alone, and that it is', () => {
  expect(show({})).toMatch(
    /plan A: simulated \d\.\d\d wide \(give or take \d\.\d\d\)\. Another whole number: simulated in .* \(give or take \d+\)\. What is expected is not known, so that nothing can be compared\./u,
  );
});
