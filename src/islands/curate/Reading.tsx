/** What follows from the result in hand: effects, the numbers behind them, and what the table would say of the study. */
import { COLUMN_WORDS } from '../../evidence/columnWords.ts';
import { upperFirst } from '../../figures/firstLetter.ts';
import { formatChange, formatSignificant } from '../../figures/format.ts';
import { defaultSettings } from '../../model/settings.ts';
import { writePercent } from '../../numerics/percent.ts';
import { focusOn } from '../../ui/focusOn.ts';
import { NumbersTable, STATISTIC_DIGITS } from '../../ui/NumbersTable.tsx';
import type { CuratingState } from './curate.state.ts';
import type { EffectShown, NumberShown, RowReading } from './readCells.ts';
import type { PlacedProblem, StudyReading } from './readStudies.ts';
import { idOf } from './studyDraft.ts';
import { outlineReading, sayProblem, sayWhere } from './words.ts';

export function CurateReading({ state }: { readonly state: CuratingState }) {
  const reading = state.reading.value;
  const isEmpty = state.isEmpty.value;
  const row = findRow(state);
  const last = state.undos.value[state.undos.value.length - 1];
  return (
    <aside class="answer" aria-label="What follows from the study">
      <p role="status" class="small" id="curate-status" tabIndex={-1}>
        {outlineReading(reading, isEmpty)} {state.done.value}
      </p>
      <div role="status">
        {last && (
          <p class="buttons">
            <span class="small">{last.what}</span>
            <button type="button" onClick={state.takeBack}>
              Take back
            </button>
          </p>
        )}
      </div>
      <h2>What follows from it</h2>
      {row ? <Followed state={state} row={row} /> : <p class="small">Effects stand here as soon as numbers do.</p>}
      {!isEmpty && (
        <>
          <Problems heading="To mend" problems={reading.problems} state={state} />
          <Problems heading="Unusual, to be looked at" problems={reading.warnings} state={state} />
          <Problems heading="Still needed" problems={reading.needed} state={state} />
        </>
      )}
      {row?.reading.numbers && <Numbers numbers={row.reading.numbers.numbers} />}
    </aside>
  );
}

type MadeRow = StudyReading['rows'][number];

/** The row of the result that was last entered; the first row where that makes none. */
export function findRow(state: CuratingState): MadeRow | undefined {
  const { rows } = state.reading.value;
  const at = state.place.value;
  const isOf = (row: MadeRow) =>
    (at?.of === 'result' && row.arm === at.arm && row.measure === at.measure) ||
    (at?.of === 'arm' && row.arm === at.arm) ||
    (at?.of === 'measure' && row.measure === at.measure);
  return rows.find(isOf) ?? rows[0];
}

function Followed({ state, row }: { readonly state: CuratingState; readonly row: MadeRow }) {
  const { numbers, waitsFor } = row.reading;
  return (
    <>
      <h3>
        {upperFirst(
          sayWhere(state.draft.value, { of: 'result', column: 'measure', arm: row.arm, measure: row.measure }),
        )}
      </h3>
      {numbers ? (
        numbers.effects.map((shown) => <EffectLine key={shown.metric} shown={shown} />)
      ) : (
        <p class="small">The effect and the numbers behind it stand here as soon as {list(waitsFor)} can be read.</p>
      )}
    </>
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
  readonly problems: readonly PlacedProblem[];
  readonly state: CuratingState;
}

function Problems({ heading, problems, state }: ProblemsProps) {
  if (problems.length === 0) return null;
  const goTo = ({ place }: PlacedProblem) => {
    state.reveal(place);
    focusOn(idOf(place));
  };
  return (
    <section class="problem">
      <h3>{heading}</h3>
      <ul>
        {problems.map((problem, i) => {
          const { label } = COLUMN_WORDS[problem.place.column];
          const where = sayWhere(state.draft.value, problem.place);
          return (
            <li key={i}>
              <strong>{label}</strong>
              {where && `, ${where}`}: {sayProblem(problem)} <code class="column">{problem.place.column}</code>{' '}
              <button
                type="button"
                class="inline"
                aria-label={`Go there: ${label}${where && `, ${where}`}`}
                onClick={() => goTo(problem)}
              >
                Go there
              </button>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/** “people in the arm, outcome and mean before”; “the row” where no single entry is missing. */
function list(columns: RowReading['waitsFor']): string {
  const names = columns.map((column) => `“${COLUMN_WORDS[column].label}”`);
  if (names.length < 2) return names[0] ?? 'the row';
  return `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;
}
