/** One page for the gym: what to do in this set, and what to mind. On paper only. */
import { formatRange, formatShare } from '../figures/format.ts';
import { describePossible } from '../practice/possible.ts';
import { showReserve } from './CalculatorResult.tsx';
import type { Calculator } from './calculator.state.ts';

interface Props {
  readonly state: Calculator;
  /** True where the evidence is invented. */
  readonly demonstration: boolean;
}

export function GymCard({ state, demonstration }: Props) {
  const { reserve, sentence, adjustments, cautions, event, choices, target } = state.advice.value;
  const { load, company, purpose } = state.choices.value;
  const possible = state.possible.value;
  const most = choices.find((choice) => choice.reserve === reserve?.most);
  return (
    <section class="gym-card" aria-hidden="true">
      <p class="small">Shy of Failure · for {purpose}</p>
      {demonstration && (
        <p>
          <strong>Demonstration: the studies behind this card are invented. Do not train by it.</strong>
        </p>
      )}
      <h2>
        {state.exercise.value.name}, {Number(load.toPrecision(3))} % of 1RM
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
            <dd>{describePossible(possible)}</dd>
          </>
        )}
        {most?.kept.share && (
          <>
            <dt>Growth kept</dt>
            <dd>
              {formatShare(most.kept.share)} with {most.reserve} in reserve; target {target.point?.toFixed(1) ?? 'none'}{' '}
              ({formatRange(target.low, target.high, 1)})
            </dd>
          </>
        )}
        {most?.recovery.time && (
          <>
            <dt>Recovered</dt>
            <dd>about {most.recovery.time.hours.toFixed(0)} hours after the session</dd>
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
