/** The calculator: a reader's load, exercise and company in, a reserve and its cautions out. */
import { useEffect, useMemo } from 'preact/hooks';
import { formatRange } from '../figures/format.ts';
import { LEAST_RELIABLE_DF } from '../model/result.ts';
import type { Advice } from '../practice/advice.ts';
import { COMPANIES } from '../practice/cautions.ts';
import type { TargetAnalysis } from '../practice/targetTable.ts';
import { createCalculator, LOAD_RANGE, POSSIBLE_REPETITIONS, type Calculator as State } from './calculator.state.ts';

interface Props {
  /** The analysis of the page as built, until the first own one arrives. */
  readonly analysis: TargetAnalysis;
  /** Address of the table on this site. */
  readonly table: string;
}

export function Calculator({ analysis, table }: Props) {
  const state = useMemo(() => createCalculator(analysis, table), [analysis, table]);
  useEffect(() => state.connect(), [state]);
  return (
    <div class="calculator">
      <Controls state={state} />
      <Result state={state} />
    </div>
  );
}

function Controls({ state }: { readonly state: State }) {
  const { load, pins, company, keep, confidence } = state.situation.value;
  const repetitions = state.repetitions.value;
  const refused = state.refused.value;
  return (
    <form class="controls" aria-label="The set" onSubmit={(event) => event.preventDefault()}>
      <Slider
        id="load"
        label="Load, % of 1RM"
        value={load}
        min={LOAD_RANGE.from}
        max={LOAD_RANGE.to}
        unit="%"
        help={
          repetitions === null
            ? 'No repetitions are published for this load.'
            : `About ${repetitions.toFixed(0)} repetitions are possible on average (bench press; people differ by several).`
        }
        onChange={(value) => state.change({ load: value })}
      />
      <div class="control">
        <label for="repetitions">Or: repetitions possible in a set</label>
        <input
          id="repetitions"
          type="number"
          min={POSSIBLE_REPETITIONS.from}
          max={POSSIBLE_REPETITIONS.to}
          step="1"
          inputMode="numeric"
          value={refused ?? repetitions?.toFixed(0) ?? ''}
          onChange={(event) => state.enterRepetitions(event.currentTarget.value)}
          aria-invalid={refused !== null}
          aria-describedby="repetitions-help"
        />
        <span class="help" id="repetitions-help">
          From {POSSIBLE_REPETITIONS.from} to {POSSIBLE_REPETITIONS.to}. Sets the load at which so many are possible on
          average.
        </span>
        <span class="help" role="status">
          {refused !== null &&
            `Expected a number from ${POSSIBLE_REPETITIONS.from} to ${POSSIBLE_REPETITIONS.to}, received ${refused === '' ? 'none' : `“${refused}”`}; the load stays at ${Number(load.toPrecision(3))} %.`}
        </span>
      </div>
      <div class="control">
        <label class="choice">
          <input
            type="checkbox"
            checked={pins}
            onChange={(event) => state.change({ pins: event.currentTarget.checked })}
          />
          <span>The exercise can pin the lifter</span>
        </label>
        <span class="help">A bar over the chest, neck or back; a sled above the body.</span>
      </div>
      <div class="control">
        <label for="company">What would take the load</label>
        <select
          id="company"
          value={company}
          onChange={(event) => {
            const chosen = COMPANIES.find((name) => name === event.currentTarget.value);
            if (chosen) state.change({ company: chosen });
          }}
        >
          {COMPANIES.map((name) => (
            <option key={name} value={name}>
              {name === 'alone' ? 'nothing: alone, no safety arms' : name}
            </option>
          ))}
        </select>
      </div>
      <Slider
        id="keep"
        label="Growth to keep"
        value={keep}
        min={50}
        max={99}
        unit="%"
        help="Share of the growth at reserve 0. Asking for more brings the target closer to failure."
        onChange={(value) => state.change({ keep: value })}
      />
      <Slider
        id="confidence"
        label="Confidence of intervals"
        value={confidence}
        min={50}
        max={99}
        unit="%"
        help="Higher makes the interval wider; the estimate stays."
        onChange={(value) => state.change({ confidence: value })}
      />
      <Readback state={state} />
    </form>
  );
}

/** On a phone the result lies below the controls: its number again, at the edge of the screen. The result itself is what is announced. */
function Readback({ state }: { readonly state: State }) {
  const { reserve, raisedForSafety } = state.advice.value;
  return (
    <p class="readback" aria-hidden="true">
      <strong>{showReserve(reserve)}</strong>
      {reserve !== null && ' in reserve'}
      {raisedForSafety && reserve !== null && ', raised for safety'}
    </p>
  );
}

function showReserve(reserve: Advice['reserve']): string {
  if (reserve === null) return 'no target';
  return reserve.least === reserve.most ? String(reserve.most) : `${reserve.least}–${reserve.most}`;
}

interface SliderProps {
  readonly id: string;
  readonly label: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly unit: string;
  readonly help: string;
  readonly onChange: (value: number) => void;
}

function Slider({ id, label, value, min, max, unit, help, onChange }: SliderProps) {
  return (
    <div class="control">
      <label for={id}>
        {label}:{' '}
        <span class="value">
          {Number(value.toPrecision(3))} {unit}
        </span>
      </label>
      <input
        id={id}
        type="range"
        min={min}
        max={max}
        step="1"
        value={value}
        onInput={(event) => onChange(event.currentTarget.valueAsNumber)}
        aria-valuetext={`${Number(value.toPrecision(3))} ${unit}`}
        aria-describedby={`${id}-help`}
      />
      <span class="help" id={`${id}-help`}>
        {help}
      </span>
    </div>
  );
}

const SOURCES = {
  light: 'studies with light loads',
  heavy: 'studies with heavy loads',
  all: 'studies with any load',
  joint: 'all studies in one fit, since the load is near the split',
} as const;

function Result({ state }: { readonly state: State }) {
  const { advice, pending, problem, ignored, analysis } = state;
  const { reserve, target, source, sentence, cautions, raisedForSafety, askedAt, unreliable } = advice.value;
  const { split } = analysis.value.settings;
  return (
    <section class={`answer ${source === 'light' ? 'light-load' : 'heavy-load'}`} aria-label="Result">
      <div aria-live="polite" aria-busy={pending.value} style={{ color: 'var(--ink)' }}>
        {problem.value !== null && <p class="problem">The numbers could not be worked out: {problem.value}</p>}
        {ignored.value.length > 0 && (
          <p class="problem">
            Parts of the address could not be read and stand at their defaults: {ignored.value.join(', ')}.
          </p>
        )}
        <p class="number-of-reps" id="reserve">
          {showReserve(reserve)} {reserve !== null && <small>in reserve</small>}
        </p>
        <p class="saying">{sentence}</p>
        {raisedForSafety && (
          <p>
            <strong>Raised for safety:</strong> this exercise can pin the lifter and nothing would take the load.
          </p>
        )}
        <dl>
          <dt>Estimate</dt>
          <dd id="point">{target.point === null ? 'none' : target.point.toFixed(2)}</dd>
          <dt>Interval</dt>
          <dd id="interval">{target.point === null ? 'none' : formatRange(target.low, target.high, 2)}</dd>
          {unreliable && (
            <>
              <dt>Caveat</dt>
              <dd>A coefficient has fewer than {LEAST_RELIABLE_DF} degrees of freedom: the interval is unreliable.</dd>
            </>
          )}
          <dt>Whole repetitions</dt>
          <dd>{target.practical ?? 'none'}</dd>
          <dt>Cautious</dt>
          <dd>{target.cautious === null ? 'none' : target.cautious.toFixed(2)}</dd>
          <dt>Read from</dt>
          <dd>
            {SOURCES[source]}
            {askedAt !== null && `, asked at ${askedAt} %`}
            {split !== null && ` (split at ${split} % of 1RM)`}
          </dd>
          {target.reason !== null && (
            <>
              <dt>Note</dt>
              <dd>{target.reason}</dd>
            </>
          )}
        </dl>
      </div>
      <aside class="cautions" aria-label="Cautions" style={{ color: 'var(--ink)' }}>
        <h2>Before anyone trains by this</h2>
        <ul>
          {cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </aside>
    </section>
  );
}
