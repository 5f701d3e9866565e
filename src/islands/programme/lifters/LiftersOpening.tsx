/** Where lifters are pasted or opened, and what was read, before it comes into the list. */
import { countOf } from '../../../numerics/countOf.ts';
import type { ReadLifters } from '../../../practice/lifters/liftersFile.ts';
import { ProblemList } from '../../../ui/ProblemList.tsx';
import { PasteEntry } from '../PasteEntry.tsx';
import type { LiftersOpening as Opening } from './opening.state.ts';

export function LiftersOpening({ opening }: { readonly opening: Opening }) {
  if (!opening.isOpen.value) return null;
  const found = opening.found.value;
  const isReady = found !== null && found.lifters.all.length > 0;
  return (
    <section
      class="pasting"
      aria-label="Paste or open lifters"
      onKeyDown={(event) => {
        if (event.key === 'Escape') opening.close();
      }}
    >
      <PasteEntry
        prefix="lifters-"
        label="Paste lifters, from a file or a spreadsheet"
        rows={6}
        accept=".csv,.tsv,.txt,.xlsx,.ods,text/csv"
        opening={opening}
        onText={opening.read}
      >
        A header, then a line for each 1RM: “lifter, exercise, one_rm, unit, step”; or a line for each lifter, with a
        column for each exercise: “lifter, squat, bench press”.
      </PasteEntry>
      {found && <Found found={found} />}
      <p class="buttons">
        <button type="button" disabled={!isReady} onClick={() => opening.take('replace')}>
          Replace all lifters
        </button>
        <button type="button" disabled={!isReady} onClick={() => opening.take('beside')}>
          Add to the lifters
        </button>
        <button type="button" onClick={opening.close}>
          Cancel
        </button>
      </p>
    </section>
  );
}

/** Lifters that are named at once. */
const MOST_NAMED = 8;

function Found({ found: { lifters, problems, warnings, said } }: { readonly found: ReadLifters }) {
  const { all } = lifters;
  const maxima = all.reduce((sum, one) => sum + one.maxima.filter(({ weight }) => weight !== '').length, 0);
  return (
    <div class="understood">
      <p role="status">
        {countOf(all.length, 'lifter')} with {countOf(maxima, '1RM', '1RMs')};{' '}
        {countOf(problems.length, 'entry', 'entries')} not read.
      </p>
      <ul class="small">
        {all.slice(0, MOST_NAMED).map((one) => (
          <li key={one.id}>
            <bdi>{one.name}</bdi>:{' '}
            {one.maxima
              .filter(({ weight }) => weight !== '')
              .map(({ exercise, weight }) => `${exercise} ${weight}${/\p{L}/u.test(weight) ? '' : ` ${one.unit}`}`)
              .join('; ') || 'no 1RM'}
          </li>
        ))}
        {all.length > MOST_NAMED && <li>and {all.length - MOST_NAMED} more</li>}
        {said.map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
      {problems.length > 0 && <ProblemList heading="Not read" problems={problems} />}
      {warnings.length > 0 && <ProblemList heading="Left aside" problems={warnings} />}
    </div>
  );
}
