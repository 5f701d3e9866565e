/** What follows from the row being edited: effects, the numbers behind them, and what the table would say of it. */
import { formatProblem, type Problem } from '../../evidence/problem.ts';
import type { ArmColumn } from '../../evidence/schema.ts';
import { formatChange, formatSignificant } from '../../figures/format.ts';
import { defaultSettings } from '../../model/settings.ts';
import { writePercent } from '../../numerics/percent.ts';
import { NumbersTable, STATISTIC_DIGITS } from '../../ui/NumbersTable.tsx';
import { ARM_NAMES } from './cells.ts';
import type { CuratingState } from './curate.state.ts';
import type { EffectShown, NumberShown } from './readCells.ts';
import { focusEntry, outlineReading } from './words.ts';

export function CurateReading({ state }: { readonly state: CuratingState }) {
  const reading = state.reading.value;
  const isEmpty = state.isEmpty.value;
  return (
    <aside class="answer" aria-label="What follows from the row">
      <p role="status" class="small" id="curate-status" tabIndex={-1}>
        {outlineReading(reading, isEmpty)} {state.done.value}
      </p>
      <div role="status">
        {state.undo.value && (
          <p class="buttons">
            <span class="small">{state.undo.value.what}</span>
            <button type="button" onClick={state.takeBack}>
              Take back
            </button>
          </p>
        )}
      </div>
      <h2>What follows from it</h2>
      {reading.numbers ? (
        reading.numbers.effects.map((shown) => <EffectLine key={shown.metric} shown={shown} />)
      ) : (
        <p class="small">
          The effect and the numbers behind it stand here as soon as {list(reading.waitsFor)} can be read.
        </p>
      )}
      {!isEmpty && (
        <>
          <Problems heading="To mend" problems={reading.problems} state={state} />
          <Problems heading="Unusual, to be looked at" problems={reading.warnings} state={state} />
          <Problems heading="Still needed" problems={reading.needed} state={state} />
        </>
      )}
      {reading.numbers && <Numbers numbers={reading.numbers.numbers} />}
    </aside>
  );
}

function EffectLine({ shown: { metric, effect, noEffect, interval } }: { readonly shown: EffectShown }) {
  const name = metric === 'log-ratio' ? 'Change' : 'Standardised';
  if (!effect || !interval) {
    return (
      <p class="small">
        {name}: none, since {noEffect}.
      </p>
    );
  }
  return (
    <p id={`curate-${metric}`}>
      {name}: <strong>{formatChange({ estimate: effect.y, ...interval }, metric)}</strong>
      <span class="small">, variance {formatSignificant(effect.v, STATISTIC_DIGITS)}</span>
    </p>
  );
}

function Numbers({ numbers }: { readonly numbers: readonly NumberShown[] }) {
  if (numbers.length === 0) return null;
  return (
    <>
      <NumbersTable label="Numbers behind the effect" numbers={numbers} />
      <p class="small">
        Intervals are {writePercent(defaultSettings.confidence)}, from the variance alone. n is the number of people in
        the row.
      </p>
    </>
  );
}

interface ProblemsProps {
  readonly heading: string;
  readonly problems: readonly Problem[];
  readonly state: CuratingState;
}

function Problems({ heading, problems, state }: ProblemsProps) {
  if (problems.length === 0) return null;
  const goTo = (column: ArmColumn) => {
    state.reveal(column);
    focusEntry(column);
  };
  return (
    <section class="problem">
      <h3>{heading}</h3>
      <ul>
        {problems.map((problem, i) => {
          const column = ARM_NAMES.find((name) => name === problem.column);
          return (
            <li key={i}>
              {formatProblem(problem)}{' '}
              {column && (
                <button type="button" class="inline" onClick={() => goTo(column)}>
                  Go to {column}
                </button>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/** “n, outcome and baseline_mean”; “the row” where no single entry is missing. */
function list(names: readonly string[]): string {
  if (names.length < 2) return names[0] ?? 'the row';
  return `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;
}
