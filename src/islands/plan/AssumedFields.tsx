/** What a plan takes from the table unless it says otherwise: measure, how people scatter in it, weeks, covariates. */

import { upperFirst } from '../../figures/firstLetter.ts';
import { formatPlain, formatSignificant } from '../../figures/format.ts';
import { listAdjusted } from '../../figures/plan/assumedWords.ts';
import type { PlanName } from '../../figures/plan/planWords.ts';
import { MOST_WEEKS, type PlannedStudy } from '../../model/plan/plannedStudy.ts';
import type { Usual } from '../../model/plan/usualMeasure.ts';
import { countOf } from '../../numerics/countOf.ts';
import { Choice } from '../../ui/Choice.tsx';
import { PlanEntry } from './PlanEntry.tsx';
import type { PlanState } from './plan.state.ts';

interface Props {
  readonly state: PlanState;
  readonly name: PlanName;
  readonly plan: PlannedStudy;
}

/** Stands for the measure of most rows among the choices; no measure is called so. */
const USUAL = '';
/** Limits of what is entered; the model's are wider, and hold for addresses. */
const VARIATION = { from: 0.1, to: 500 } as const;
const CORRELATION = { from: -0.99, to: 0.999 } as const;
const WEEKS = { from: 1, to: MOST_WEEKS } as const;
const DIGITS = 3;

export function AssumedFields({ state, name, plan }: Props) {
  const { measures, usualWeeks } = state.answers.facts.value;
  const chosen = plan.measure === null ? measures[0] : measures.find(({ measure }) => measure === plan.measure);
  const isKnown = plan.measure === null || chosen !== undefined;
  const set = (part: Partial<PlannedStudy>) => state.setPlan(name, { ...plan, ...part });
  const { coefficientOfVariation: cv, correlation: r, weeks } = plan;
  const spread = cv ?? chosen?.coefficientOfVariation?.value;
  const { settings } = state.answers.facts.value;
  const assumptions = state.answers.answers.value[name]?.expectation.assumptions;
  const adjusted = assumptions ? listAdjusted(assumptions, plan, settings) : [];
  const relation = r ?? chosen?.correlation.value;
  return (
    <details>
      <summary>
        What is assumed: {chosen?.measure ?? plan.measure ?? 'no measure in this table'}
        {spread !== undefined && `, spread ${formatSignificant(100 * spread, DIGITS)}\u00a0%`}
        {relation !== undefined && `, correlation ${formatSignificant(relation, DIGITS)}`}
        <span class="unseen">, plan {name}</span>
      </summary>
      <div class="controls">
        <Choice
          id={`${name}-measure`}
          label="Measure"
          value={plan.measure ?? USUAL}
          options={[
            [USUAL, measures[0] ? `the usual one: ${measures[0].measure}` : 'none in this table'],
            ...(isKnown ? [] : [[plan.measure ?? '', `${plan.measure} (not in this table)`] as const]),
            ...measures.map(({ measure, rows }) => [measure, `${measure} (${countOf(rows, 'row')})`] as const),
          ]}
          onChange={(measure) => set({ measure: measure === USUAL ? null : measure })}
        />
        <PlanEntry
          state={state}
          id={`${name}-cv`}
          label="Spread between people before training, % of the mean"
          value={cv === null ? null : Number((100 * cv).toPrecision(6))}
          {...VARIATION}
          help={stateUsual(chosen?.coefficientOfVariation ?? null, 100, '\u00a0%', chosen?.reason)}
          onTake={(value) => set({ coefficientOfVariation: Number((value / 100).toPrecision(6)) })}
          onEmpty={() => set({ coefficientOfVariation: null })}
        />
        <PlanEntry
          state={state}
          id={`${name}-r`}
          label="Correlation of before with after"
          value={r}
          {...CORRELATION}
          help={stateUsual(chosen?.correlation ?? null, 1, '')}
          onTake={(value) => set({ correlation: value })}
          onEmpty={() => set({ correlation: null })}
        />
        <PlanEntry
          state={state}
          id={`${name}-weeks`}
          label="Weeks of training"
          value={weeks}
          {...WEEKS}
          help={`${usualWeeks === null ? 'No row of this table says.' : `Left empty: ${formatPlain(usualWeeks)}, the median here.`} They count only where the analysis adjusts for weeks.`}
          onTake={(value) => set({ weeks: value })}
          onEmpty={() => set({ weeks: null })}
        />
      </div>
      {adjusted.length > 0 && (
        <p class="small">The analysis is adjusted, and these arms are taken to have: {adjusted.join('; ')}.</p>
      )}
    </details>
  );
}

/** What stands where the entry is empty, and what that rests on. */
function stateUsual(usual: Usual | null, times: number, unit: string, reason?: string | null): string {
  if (!usual) return upperFirst(`${reason ?? 'nothing in this table says'}.`);
  return `Left empty: ${formatSignificant(times * usual.value, DIGITS)}${unit}, ${usual.words}.`;
}
