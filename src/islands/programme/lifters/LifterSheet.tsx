/** A lifter's week on one page: what to do, with which load, what to leave, and room for what was done. */
import { ALWAYS, groupCautions } from '../../../practice/cautions.ts';
import type { LifterLine } from '../../../practice/lifters/judge.ts';
import type { Lifter } from '../../../practice/lifters/lifter.ts';
import { headDay, type SheetDay } from '../../../practice/lifters/sheet.ts';
import { noteOf, tellLoad, tellSet } from '../../../practice/lifters/tellLine.ts';
import { SITE_NAME } from '../../../ui/siteName.ts';
import { fitSheet } from './fitSheet.ts';

interface Props {
  readonly lifter: Pick<Lifter, 'name'>;
  /** From 1; null where the days cannot be read. */
  readonly week: number | null;
  readonly days: readonly SheetDay[];
  readonly isInvented: boolean;
}

export function LifterSheet({ lifter: { name }, week, days, isInvented }: Props) {
  const lines = days.flatMap((day) => day.lines);
  return (
    <article class="gym-sheet" data-size={fitSheet(name, days, isInvented)}>
      <header>
        <h3>
          <bdi>{name}</bdi>
        </h3>
        <p>
          {week === null ? 'Days not known' : `Week ${week}`} · {SITE_NAME}
        </p>
      </header>
      {isInvented && (
        <p>
          <strong>Demonstration: the studies behind this site are invented. Do not train by what it advises.</strong>
        </p>
      )}
      <div class="gym-heads" aria-hidden="true">
        <span>Exercise</span>
        <span>Sets × repetitions</span>
        <span>Load</span>
        <span>When to end a set</span>
        <span>Done</span>
      </div>
      {days.map(({ day, lines: own }) => (
        <section key={day}>
          <h4>{headDay(day)}</h4>
          <ol>
            {own.map((line) => (
              <SheetLine key={line.id} line={line} />
            ))}
          </ol>
        </section>
      ))}
      <footer>
        <ul>
          {groupCautions(lines).map(({ caution, exercises }) => (
            <li key={caution}>
              <strong>{exercises.join(', ')}:</strong> {caution}
            </li>
          ))}
          {ALWAYS.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
        <p>1RM is the load that can be lifted once. Loads are rounded down to what the plates allow.</p>
      </footer>
    </article>
  );
}

function SheetLine({ line }: { readonly line: LifterLine }) {
  const note = noteOf(line);
  const sets = [line.sets || '?', line.repetitions || '?'].join(' × ');
  return (
    <li class="gym-line">
      <p class="what">
        <strong>{line.exercise || 'Exercise not given'}</strong>
        {note !== '' && <span class="gym-note">{note}</span>}
      </p>
      <p>
        <span class="label">Sets × repetitions</span>
        {sets}
      </p>
      <p class={line.load.kind === 'weight' ? 'load' : 'load worded'}>
        <span class="label">Load</span>
        <strong>{tellLoad(line.load)}</strong>
      </p>
      <p>
        <span class="label">When to end a set</span>
        {tellSet(line)}
      </p>
      <p class="done">
        <span class="label">Done</span>
      </p>
    </li>
  );
}
