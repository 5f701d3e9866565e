/** The studies so far: which one is in the form, what is still wrong with each, and all of them as a file. */
import { countOf } from '../../numerics/countOf.ts';
import { focusOn } from '../../ui/focusOn.ts';
import { Scroll } from '../../ui/Scroll.tsx';
import { TableHead } from '../../ui/TableHead.tsx';
import { type CuratingState, nameStudy } from './curate.state.ts';
import type { StudyReading } from './readStudies.ts';
import type { StudyDraft } from './studyDraft.ts';
import { TakeAway } from './TakeAway.tsx';
import { outlineReading, STUDIES_HEADING } from './words.ts';

export function CurateStudies({ state }: { readonly state: CuratingState }) {
  const studies = state.studies.value;
  return (
    <section aria-labelledby={STUDIES_HEADING}>
      <h2 id={STUDIES_HEADING} tabIndex={-1}>
        Studies so far
      </h2>
      {studies.length === 0 ? (
        <p class="small">None yet. What is entered stays here, in this browser, until you remove it.</p>
      ) : (
        <>
          <Scroll label="Table of the studies">
            <table class="wide">
              <TableHead columns={['Study', 'Arms', 'Measures', 'Rows', 'State', 'What to do']} />
              <tbody>
                {studies.map((study) => (
                  <Study key={study.id} study={study} reading={state.readings.value.get(study.id)} state={state} />
                ))}
              </tbody>
            </table>
          </Scroll>
          <TakeAway state={state} />
        </>
      )}
    </section>
  );
}

interface StudyProps {
  readonly study: StudyDraft;
  readonly reading: StudyReading | undefined;
  readonly state: CuratingState;
}

function Study({ study, reading, state }: StudyProps) {
  const isEdited = state.draft.value.id === study.id;
  const name = nameStudy(study);
  const lines = reading?.rows.map(({ line }) => line) ?? [];
  const open = () => {
    state.open(study.id);
    focusOn('entry-study');
  };
  const remove = () => {
    state.remove(study.id);
    // The button is gone, or another study's by now.
    focusOn(STUDIES_HEADING);
  };
  return (
    <tr aria-current={isEdited ? 'true' : undefined}>
      <th scope="row">{name}</th>
      <td>{study.arms.length}</td>
      <td>{study.measures.length}</td>
      <td>{lines.length === 0 ? 'none yet' : `${countOf(lines.length, 'row')}, ${sayLines(lines)}`}</td>
      <td>
        {isEdited && 'In the form. '}
        {reading && outlineReading(reading, false)}
      </td>
      <td>
        <span class="buttons">
          {!isEdited && (
            <button type="button" class="inline" aria-label={`Open ${name}`} onClick={open}>
              Open
            </button>
          )}
          <button type="button" class="inline" aria-label={`Remove ${name}`} onClick={remove}>
            Remove
          </button>
        </span>
      </td>
    </tr>
  );
}

/** Lines of a study’s rows, which stand together: “lines 2 to 7”. */
function sayLines(lines: readonly number[]): string {
  return lines.length === 1 ? `line ${lines[0]}` : `lines ${lines[0]} to ${lines[lines.length - 1]}`;
}
