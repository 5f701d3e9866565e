/** The expected width checked the slow way: the study is drawn many times and everything is fitted anew. */
import { formatChance, formatWidth, stateWidth } from '../../figures/plan/planWords.ts';
import type { PlanAnswer } from '../../model/plan/planAnswer.ts';
import type { BandSimulation } from '../../model/plan/simulatePlan.ts';
import { LOAD_HEADINGS } from '../../practice/loadNames.ts';
import { Trouble } from '../../ui/Trouble.tsx';
import { type PlanState, SIMULATED } from './plan.state.ts';
import { listPlans } from './plans.ts';

export function SimulationCheck({ state }: { readonly state: PlanState }) {
  const { simulation } = state;
  const asked = simulation.asked.value;
  const isRunning = asked !== null && asked.result === null && asked.problem === null;
  const answer = asked ? state.answers.answers.value[asked.request.name] : undefined;
  return (
    <section class="panel">
      <h2>Check it by simulation</h2>
      <p>
        What is expected is worked out by a formula. The check draws the study {SIMULATED} times, adds its results to
        the table and fits everything anew, the spread between studies too.
      </p>
      <div class="buttons">
        {listPlans(state.page.value.plans).map(([name]) => (
          <button key={name} id={`check-${name}`} type="button" onClick={() => simulation.start(name)}>
            Check plan {name}
          </button>
        ))}
        {isRunning && (
          <>
            <progress value={simulation.share.value} max={1} aria-label="Studies drawn" />
            <button
              type="button"
              class="inline"
              onClick={() => {
                simulation.stop();
                // The button is gone: the focus goes back to what began the check.
                document.getElementById(`check-${asked.request.name}`)?.focus();
              }}
            >
              Stop
            </button>
          </>
        )}
      </div>
      <div aria-live="polite">
        {asked && (
          <Trouble
            what="It could not be simulated"
            reason={asked.problem}
            onRetry={() => simulation.start(asked.request.name)}
          />
        )}
        {asked?.result && <Agreement answer={answer} found={asked.result} name={asked.request.name} />}
      </div>
    </section>
  );
}

interface AgreementProps {
  readonly name: string;
  /** Undefined where what is expected of the plan is not known: its card says why. */
  readonly answer: PlanAnswer | undefined;
  readonly found: readonly BandSimulation[];
}

function Agreement({ name, answer, found }: AgreementProps) {
  if (found.length === 0)
    return (
      <p>Plan {name} has no arm that a fitted curve says anything of, so that there is nothing to draw a study from.</p>
    );
  return (
    <ul>
      {found.map((one) => (
        <li key={one.band}>
          {LOAD_HEADINGS[one.band]}, plan {name}: {compare(answer, one)}
        </li>
      ))}
    </ul>
  );
}

function compare(
  answer: PlanAnswer | undefined,
  { band, after, widthError, chanceOfMove, chanceError }: BandSimulation,
) {
  const error = widthError === null ? '' : ` (give or take ${formatWidth(widthError)})`;
  const moved = `simulated in ${formatChance(chanceOfMove)} (give or take ${Math.max(1, Math.round(100 * chanceError))})`;
  if (!answer)
    return `simulated ${stateWidth(after)}${error}. Another whole number: ${moved}. What is expected is not known, so that nothing can be compared.`;
  const expected = answer.expectation.bands.find((one) => one.band === band);
  if (!expected?.after) return `expected nothing, simulated ${stateWidth(after)}${error}.`;
  const widths =
    expected.after.width === null || after.width === null
      ? `expected ${stateWidth(expected.after)}, simulated ${stateWidth(after)}${error}`
      : `expected ${formatWidth(expected.after.width)} wide, simulated ${formatWidth(after.width)}${error}: ${stateMiss(expected.after.width, after.width)}`;
  return `${widths}. Another whole number: expected in ${formatChance(expected.chanceOfMove ?? 0)} outcomes, ${moved}.`;
}

function stateMiss(expected: number, simulated: number): string {
  const percent = Math.round((100 * Math.abs(expected - simulated)) / simulated);
  return percent === 0 ? 'they agree within 1\u00a0%' : `they differ by ${percent}\u00a0%`;
}
