/** The page that plans a study: up to three plans side by side, what each would do, and what may be asked of them. */
import type { ComponentChildren } from 'preact';
import { useMemo } from 'preact/hooks';
import { formatExpected, type PlanName } from '../../figures/plan/planWords.ts';
import { stateSettings } from '../../figures/settingsWords.ts';
import type { PlanAnswer } from '../../model/plan/planAnswer.ts';
import { defaultSettings } from '../../model/settings.ts';
import { AwaitOwn } from '../../ownTable/AwaitOwn.tsx';
import { useConnection, useTable } from '../../ownTable/useTable.ts';
import { LOAD_NAMES } from '../../practice/loadNames.ts';
import { PLAN_CAUTIONS } from '../../practice/planCautions.ts';
import { Cautions } from '../../ui/Cautions.tsx';
import { focusOn } from '../../ui/focusOn.ts';
import { Trouble } from '../../ui/Trouble.tsx';
import { BestPlacement } from './BestPlacement.tsx';
import { Comparison } from './Comparison.tsx';
import { LimitNote } from './LimitNote.tsx';
import { PeopleForWidth } from './PeopleForWidth.tsx';
import { PlanFields } from './PlanFields.tsx';
import { PlanResult } from './PlanResult.tsx';
import { type Built, createPlanPage, type PlanState } from './plan.state.ts';
import { listPlans, nextName } from './plans.ts';
import { SimulationCheck } from './SimulationCheck.tsx';
import { isSame } from './same.ts';
import { TakeAway } from './TakeAway.tsx';

interface Props {
  readonly built: Built;
  /** Address of the site's table. */
  readonly table: string;
  /** Name of its file. */
  readonly tableName: string;
  /** The figures as the build drew them, by band. */
  readonly light?: ComponentChildren;
  readonly heavy?: ComponentChildren;
  readonly all?: ComponentChildren;
}

export function Plan({ built, table, tableName, ...drawn }: Props) {
  const { address, isKnown, table: inUse } = useTable(table);
  const state = useMemo(() => createPlanPage(built, address), [built, address]);
  useConnection(state, isKnown);
  const { answers } = state;
  const isShown = answers.isShown.value;
  return (
    <div class="planning">
      <Messages state={state} />
      <div aria-busy={answers.pending.value} hidden={!isShown}>
        <ChosenSettings state={state} />
        <div class="plans">
          {listPlans(state.page.value.plans).map(([name, plan]) => {
            const answer = answers.answers.value[name];
            const reason = answers.failed.value[name] ?? null;
            return (
              <section key={name} class="plan" aria-labelledby={`plan-${name}`}>
                <h2 id={`plan-${name}`}>Plan {name}</h2>
                <div class="plan-parts">
                  <div>
                    <PlanFields state={state} name={name} plan={plan} />
                    <PlanButtons state={state} name={name} />
                  </div>
                  <div>
                    {answer && <PlanResult state={state} name={name} answer={answer} />}
                    {!answer && reason === null && <p>Being worked out …</p>}
                    <Trouble what="This plan could not be worked out" reason={reason} onRetry={answers.retry} />
                  </div>
                </div>
              </section>
            );
          })}
        </div>
        <LimitNote answers={Object.values(answers.answers.value)} settings={answers.facts.value.settings} />
        <Comparison state={state} drawn={drawn} />
        <PeopleForWidth state={state} />
        <BestPlacement state={state} />
        <SimulationCheck state={state} />
        <TakeAway state={state} tableName={inUse.kind === 'own' ? inUse.about.name : tableName} />
      </div>
      <Cautions cautions={PLAN_CAUTIONS} heading="Before anyone plans by this" />
    </div>
  );
}

function Messages({ state: { answers, notice } }: { readonly state: PlanState }) {
  return (
    <div aria-live="polite">
      <AwaitOwn awaits={answers.awaitsOwn.value} problem={answers.problem.value} />
      {notice.value !== null && <p class="problem">{notice.value}</p>}
      <Trouble what="The plans could not be worked out" reason={answers.problem.value} onRetry={answers.retry} />
      {answers.isShown.value && !answers.pending.value && (
        <p class="unseen">
          {Object.entries(answers.answers.value).map(([name, answer]) => announce(name as PlanName, answer))}
          {Object.entries(answers.failed.value).map(
            ([name, reason]) => `Plan ${name} could not be worked out: ${reason}. `,
          )}
        </p>
      )}
    </div>
  );
}

/** What a change came to, for those who do not see the figures move. */
function announce(name: PlanName, { expectation: { problems, bands } }: PlanAnswer): string {
  if (problems.length > 0) return `Plan ${name}: ${problems.join('; ')}. `;
  const told = bands
    .filter(({ arms }) => arms > 0)
    .map(({ band, after }) => `${LOAD_NAMES[band]} expected ${after ? formatExpected(after) : 'cannot be foreseen'}`);
  return `Plan ${name}: ${told.join('; ') || 'no arms'}. `;
}

/** The settings of the analysis, where they are not the site's own. */
function ChosenSettings({ state }: { readonly state: PlanState }) {
  const { settings } = state.answers.facts.value;
  if (isSame(settings, defaultSettings)) return null;
  const own = new Map(stateSettings(defaultSettings));
  const others = stateSettings(settings).filter(([name, value]) => own.get(name) !== value);
  return (
    <div class="doubt">
      <p>The analysis is not the site’s own choice:</p>
      <ul>
        {others.map(([name, value]) => (
          <li key={name}>
            {name}: {value}
          </li>
        ))}
      </ul>
      <p class="buttons">
        <button type="button" onClick={() => state.change({ settings: defaultSettings })}>
          Take the site’s choices
        </button>
      </p>
    </div>
  );
}

function PlanButtons({ state, name }: { readonly state: PlanState; readonly name: PlanName }) {
  const { plans } = state.page.value;
  const plan = plans[name];
  const all = listPlans(plans);
  const free = nextName(plans);
  const copyTo = (to: PlanName) => {
    if (plan) state.setPlan(to, plan);
    focusOn(`${to}-design`);
  };
  return (
    <p class="buttons">
      {free && (
        <button type="button" onClick={() => copyTo(free)}>
          Compare with a plan {free}
          <span class="unseen">, begun as a copy of {name}</span>
        </button>
      )}
      {all
        .filter(([one]) => one !== name)
        .map(([one]) => (
          <button key={one} type="button" class="inline" onClick={() => copyTo(one)}>
            Copy {name} to {one}
          </button>
        ))}
      {all.length > 1 && (
        <button
          type="button"
          class="inline"
          onClick={() => {
            state.removePlan(name);
            const left = all.find(([one]) => one !== name);
            if (left) focusOn(`${left[0]}-design`);
          }}
        >
          Remove plan {name}
        </button>
      )}
    </p>
  );
}
