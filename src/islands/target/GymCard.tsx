/** One page for the gym: what to do in this set, and what to mind. On paper only. */

import { formatPlain, formatShare, formatTarget } from '../../figures/format.ts';
import { sayTarget, stateDifference, stateShift } from '../../practice/judgement.ts';
import { statePossibleForLifter } from '../../practice/possible.ts';
import { writeHours } from '../../practice/recovery.ts';
import { showReserve } from '../../ui/reserveWords.ts';
import { SITE_NAME } from '../../ui/siteName.ts';
import type { Calculator } from './calculator.state.ts';

interface Props {
  readonly state: Calculator;
  /** True where the studies behind the answer are. */
  readonly isInvented: boolean;
}

export function GymCard({ state, isInvented }: Props) {
  const { reserve, sentence, adjustments, cautions, event, choices, target } = state.advice.value;
  const { load, company, purpose } = state.choices.value;
  const possible = state.possible.value;
  const judgement = state.judged.value;
  const isMoved = stateShift(judgement) !== null;
  const said = sayTarget(target, judgement);
  const most = choices.find((choice) => choice.reserve === reserve?.most);
  return (
    <section class="gym-card">
      <p class="small">
        {SITE_NAME} · for {purpose}
      </p>
      {isInvented && (
        <p>
          <strong>Demonstration: the studies behind this card are invented. Do not train by it.</strong>
        </p>
      )}
      <h2>
        {state.exercise.value.name}, {formatPlain(load)}&nbsp;% of 1RM
      </h2>
      <p class="number-of-reps">
        {showReserve(reserve)} {reserve && <small>in reserve</small>}
      </p>
      <p class="saying">{sentence}</p>
      {adjustments.map((reason) => (
        <p key={reason}>{reason}</p>
      ))}
      <dl>
        <dt>Company</dt>
        <dd>{company === 'alone' ? 'alone, no safety arms' : company}</dd>
        {possible && (
          <>
            <dt>Possible</dt>
            <dd>{statePossibleForLifter(possible)}</dd>
          </>
        )}
        {most?.kept.share && (
          <>
            <dt>Growth kept</dt>
            <dd>
              {formatShare(most.kept.share)} with {most.reserve} {isMoved && 'said to be '}in reserve; target{' '}
              {isMoved && 'to say '}
              {said ? formatTarget(said) : 'none'}
            </dd>
          </>
        )}
        {isMoved && (
          <>
            <dt>Judgement</dt>
            <dd>{stateDifference(judgement)}</dd>
          </>
        )}
        {most?.recovery.time && (
          <>
            <dt>Recovered</dt>
            <dd>
              about {writeHours(most.recovery.time.hours)} after sets with {most.recovery.time.reserve} in reserve
            </dd>
          </>
        )}
        {event && (
          <>
            <dt>Event</dt>
            <dd>{event.sentence}</dd>
          </>
        )}
      </dl>
      <ul>
        {cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      <p class="ruled">Done and left:</p>
      <p class="ruled">Notes:</p>
    </section>
  );
}
