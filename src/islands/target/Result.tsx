/** The calculator's answer: what to tell the lifter, what it is worth and costs, what it rests on, and the cautions. */

import { formatHours, formatNumber, formatRange, formatShare, formatTarget } from '../../figures/format.ts';
import { growthAtLoad } from '../../figures/growthAtLoad.ts';
import { stateStrength } from '../../figures/outcomeFindings.ts';
import { recoveryByHours } from '../../figures/recoveryByHours.ts';
import { LEAST_RELIABLE_DF } from '../../model/result.ts';
import { AwaitOwn } from '../../ownTable/AwaitOwn.tsx';
import type { Advice, ReserveChoice } from '../../practice/advice.ts';
import { COMMON_PRACTICE_TAG } from '../../practice/commonPractice.ts';
import { stateNear } from '../../practice/evidenceNear.ts';
import { sayTarget, stateDifference, stateShift } from '../../practice/judgement.ts';
import { SOURCE_NAMES } from '../../practice/loadNames.ts';
import { wholeHours } from '../../practice/recovery.ts';
import { fitNear } from '../../practice/targetTable.ts';
import { Cautions } from '../../ui/Cautions.tsx';
import { LaterFigure } from '../../ui/LaterFigure.tsx';
import { showReserve } from '../../ui/reserveWords.ts';
import { TableHead } from '../../ui/TableHead.tsx';
import { Trouble } from '../../ui/Trouble.tsx';
import type { Calculator } from './calculator.state.ts';

export function CalculatorResult({ state }: { readonly state: Calculator }) {
  const { fitted, ignored } = state;
  const { problem } = fitted;
  const { source, cautions } = state.advice.value;
  const isShown = fitted.isShown.value;
  return (
    <section class={`answer ${source === 'light' ? 'light-load' : 'heavy-load'}`} aria-label="Result">
      <div aria-live="polite" aria-busy={fitted.pending.value} class="inked">
        <AwaitOwn awaits={fitted.awaitsOwn.value} problem={problem.value} />
        <Trouble what="The numbers could not be worked out" reason={problem.value} onRetry={fitted.retry} />
        {ignored.value.length > 0 && (
          <p class="problem">
            Parts of the address could not be read and stand at their defaults: {ignored.value.join(', ')}.
          </p>
        )}
        {isShown && <Answer state={state} />}
      </div>
      {isShown && <Behind state={state} />}
      <Cautions class="inked" cautions={cautions} />
      {isShown && (
        <p class="buttons inked">
          <button type="button" onClick={() => print()}>
            Print a card for the gym
          </button>
        </p>
      )}
    </section>
  );
}

/** What is announced: the number, what to say, and why it is not the evidence's own. */
function Answer({ state }: { readonly state: Calculator }) {
  const { reserve, sentence, adjustments, event, mainLift } = state.advice.value;
  const { strength, settings } = state.fitted.analysis.value;
  return (
    <>
      <p class="number-of-reps" id="reserve">
        {showReserve(reserve)} {reserve !== null && <small>in reserve</small>}
      </p>
      <p class="saying">{sentence}</p>
      {adjustments.map((reason) => (
        <p key={reason}>{reason}</p>
      ))}
      {event && <EventSentence sentence={event.sentence} />}
      {mainLift && <p>{stateStrength(strength, settings)}</p>}
    </>
  );
}

/** What one more and one fewer would change, what it rests on, and what is common practice beside it. */
function Behind({ state }: { readonly state: Calculator }) {
  const advice = state.advice.value;
  const { event, practice } = advice;
  const analysis = state.fitted.analysis.value;
  const { load } = state.choices.value;
  const near = fitNear(analysis, load);
  return (
    <div class="inked">
      <Choices advice={advice} isMoved={stateShift(state.judged.value) !== null} />
      {near && (
        <LaterFigure
          figure={growthAtLoad(analysis, near, {
            load,
            target: advice.target,
            advised: advice.reserve,
            bias: state.judged.value.bias,
          })}
        />
      )}
      {event?.time && (
        <LaterFigure
          figure={recoveryByHours(state.fitted.analysis.value, {
            status: state.choices.value.status,
            eventAfter: event.hours,
          })}
        />
      )}
      <Basis state={state} />
      <h2>
        Beside it <span class="tag">{COMMON_PRACTICE_TAG}</span>
      </h2>
      <ul>
        {practice.map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
    </div>
  );
}

/** The verdict, up to its colon, stands out. */
function EventSentence({ sentence }: { readonly sentence: string }) {
  const [, verdict, rest] = /^([^:]+:)(.*)$/u.exec(sentence) ?? [null, '', sentence];
  return (
    <p id="event">
      <strong>{verdict}</strong>
      {rest}
    </p>
  );
}

/** What one more and one fewer would change. */
function Choices({ advice, isMoved }: { readonly advice: Advice; readonly isMoved: boolean }) {
  const { choices, reserve } = advice;
  if (!reserve) return null;
  return (
    <table class="numbers">
      <caption>What one more or one fewer in reserve changes. Marked: what is advised.</caption>
      <TableHead
        columns={[isMoved ? 'Said in reserve' : 'In reserve', 'Growth kept (interval)', 'Recovered after (interval)']}
      />
      <tbody>
        {choices.map((choice) => {
          const isAdvised = choice.reserve >= reserve.least && choice.reserve <= reserve.most;
          return (
            <tr key={choice.reserve} aria-current={isAdvised ? 'true' : undefined}>
              <th scope="row">
                {isAdvised ? '▸ ' : ''}
                {choice.reserve}
              </th>
              <td>{showKept(choice)}</td>
              <td>{showRecovery(choice)}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

function showKept({ kept }: ReserveChoice): string {
  return kept.share ? formatShare(kept.share) : `not known: ${kept.reason}`;
}

function showRecovery({ recovery }: ReserveChoice): string {
  const { time, reason } = recovery;
  if (!time) return `not known: ${reason}`;
  const beyond = time.isBeyondStudied ? `, as with ${time.reserve}: no more was studied` : '';
  return `${wholeHours(time.hours)} h (${formatHours(time.low, time.high)})${beyond}`;
}

/** What will really be left, and why that is not what is said. */
function showTrained(state: Calculator): string {
  const { trained, mainLift, possible } = state.advice.value;
  if (!trained) return '';
  const { mean, low, high } = trained;
  const people = `${formatRange(low, high, 1)} for about two people in three`;
  if (mainLift) {
    const spread = possible?.sd === null ? 'the spread between people is not published for this load' : people;
    return `${formatNumber(mean, 1)} on average from the repetitions planned; ${spread}`;
  }
  return state.situation.value.judgement.spread > 0 ? people : 'as much as is said';
}

/** How the lifter judges, and what is moved by it. */
function JudgedBy({ state }: { readonly state: Calculator }) {
  const { advice, choices, judged } = state;
  const { target, mainLift } = advice.value;
  const { judgement } = choices.value;
  if (judgement === 'taken as said') return null;
  if (mainLift) {
    return (
      <>
        <dt>Judgement</dt>
        <dd id="judged">
          Planned repetitions are counted, not judged: nothing here is moved by how the lifter judges.
        </dd>
      </>
    );
  }
  const said = sayTarget(target, judged.value);
  return (
    <>
      <dt>Target to say</dt>
      <dd id="said">{said ? formatTarget(said) : 'none'}</dd>
      <dt>Judgement</dt>
      <dd id="judged">{stateShift(judged.value) ?? stateDifference(judged.value)}</dd>
    </>
  );
}

/** What the answer rests on. */
function Basis({ state }: { readonly state: Calculator }) {
  const { target, source, unreliable, near, trained, testSet } = state.advice.value;
  const { split } = state.fitted.analysis.value.settings;
  return (
    <dl>
      <dt>Estimate for growth</dt>
      <dd id="point">{target.shown === null ? 'none' : formatNumber(target.shown.point, 1)}</dd>
      <dt>Interval</dt>
      <dd id="interval">{target.shown === null ? 'none' : formatRange(target.shown.low, target.shown.high, 1)}</dd>
      {unreliable && (
        <>
          <dt>Caveat</dt>
          <dd>A coefficient has fewer than {LEAST_RELIABLE_DF} degrees of freedom: the interval is unreliable.</dd>
        </>
      )}
      <dt>Read from</dt>
      <dd>
        {source === 'joint'
          ? `${SOURCE_NAMES.joint}, since the load is near the split`
          : `studies with ${SOURCE_NAMES[source]}`}
        {split !== null && ` (split at ${split}\u00a0% of 1RM)`}
      </dd>
      <dt>Evidence near</dt>
      <dd id="near">{stateNear(near, trained !== null)}</dd>
      {trained && (
        <>
          <dt>Really left</dt>
          <dd id="trained">
            {showTrained(state)}
            {testSet &&
              '. That reaches further from failure than the target’s interval: a test set to failure, guarded, would show how this lifter judges.'}
          </dd>
        </>
      )}
      <JudgedBy state={state} />
      {target.reason !== null && (
        <>
          <dt>Note</dt>
          <dd>{target.reason}</dd>
        </>
      )}
    </dl>
  );
}
