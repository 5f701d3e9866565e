/** The sheets for the gym: what to look at before they are handed out, one on the screen, and one or all on paper. */
import { useEffect } from 'preact/hooks';
import { explainRounding, listToLookAt } from '../../../figures/lifterFindings.ts';
import { countOf } from '../../../numerics/countOf.ts';
import type { LifterLines } from '../../../practice/lifters/judge.ts';
import { weeksOf } from '../../../practice/lifters/sheet.ts';
import { Choice } from '../../../ui/Choice.tsx';
import { Trouble } from '../../../ui/Trouble.tsx';
import { LifterSheet } from './LifterSheet.tsx';
import type { LiftersState } from './lifters.state.ts';
import type { SheetsState } from './sheets.state.ts';

interface Props {
  readonly state: LiftersState;
  readonly sheets: SheetsState;
  readonly isInvented: boolean;
}

export function Sheets({ state, sheets, isInvented }: Props) {
  const { judged, shown, paper, isCurrent } = sheets;
  const wanted = paper.value;
  useEffect(() => {
    // Once the sheets stand on the page.
    if (wanted) print();
  }, [wanted]);
  if (state.lifters.value.all.length === 0) return null;
  const one = shown.value;
  const onPaper = wanted?.of === 'all' ? judged.value : one ? [one] : [];
  return (
    <>
      <section class="entry sheets-bar" aria-labelledby="sheets" aria-busy={!isCurrent.value && !sheets.problem.value}>
        <h2 id="sheets" tabIndex={-1}>
          Sheets for the gym
        </h2>
        <div role="status">
          <Trouble
            what="The loads could not be held against the evidence"
            reason={sheets.problem.value}
            onRetry={sheets.retry}
          />
        </div>
        {one && <Choices sheets={sheets} one={one} />}
        {judged.value.length > 0 && one && <ToLookAt judged={judged.value} one={one} />}
      </section>
      {one && (
        <div class={wanted ? 'gym-sheets on-paper' : 'gym-sheets'}>
          {onPaper.map((lines) =>
            weeksOf(lines.lines).map(({ week, days }) => (
              <LifterSheet
                key={`${lines.lifter.id} ${week}`}
                lifter={lines.lifter}
                week={week}
                days={days}
                isInvented={isInvented}
              />
            )),
          )}
          {one.lines.length === 0 && <p>No lines yet: the sheets come of the lines above.</p>}
        </div>
      )}
    </>
  );
}

function Choices({ sheets, one }: { readonly sheets: SheetsState; readonly one: LifterLines }) {
  const { judged, list, version, awaited } = sheets;
  const isIdle = !sheets.canPrint.value;
  const all = judged.value.length;
  return (
    <>
      <div class="row-of-controls">
        <Choice
          id="sheet-of"
          label="Sheet of"
          value={String(one.lifter.id)}
          options={judged.value.map(({ lifter: { id, name } }) => [String(id), name])}
          onChange={(id) => sheets.chooseLifter(Number(id))}
        />
        {sheets.hasSecond.value && (
          <Choice
            id="sheet-version"
            label="Of the programme’s"
            value={version.value}
            options={[
              ['first', 'version one'],
              ['second', 'version two'],
            ]}
            onChange={sheets.chooseVersion}
          />
        )}
      </div>
      <p class="buttons">
        <button type="button" aria-disabled={isIdle} onClick={() => sheets.print('one')}>
          Print this sheet
        </button>
        {all > 1 && (
          <button type="button" aria-disabled={isIdle} onClick={() => sheets.print('all')}>
            Print the sheets of all {all} lifters
          </button>
        )}
        <span class="small" role="status">
          {awaited.value !== null && 'Printed as soon as the last change has been judged.'}
        </span>
        <span class="small">
          {countOf(sheets.pages.value, 'page')} a lifter, one a week
          {list.value.lines.length === 0 ? '' : '; the browser’s own print command prints the programme'}.
        </span>
      </p>
    </>
  );
}

function ToLookAt({ judged, one }: { readonly judged: readonly LifterLines[]; readonly one: LifterLines }) {
  const found = listToLookAt(one);
  const averages = explainRounding(one);
  const others = judged.filter((lines) => lines !== one && listToLookAt(lines).length > 0);
  return (
    <div class="look-at">
      <h3>To look at before it is handed out</h3>
      {found.length === 0 ? (
        <p>
          Nothing in the loads of <bdi>{one.lifter.name}</bdi>.
        </p>
      ) : (
        <ul>
          {found.map(({ id, place, said }) => (
            <li key={id}>
              <strong>{place}:</strong> {said.join(' ')}
            </li>
          ))}
        </ul>
      )}
      {averages && <p class="small">{averages}</p>}
      {others.length > 0 && (
        <p class="small">
          Also for{' '}
          {others.slice(0, MOST_NAMED).map(({ lifter: { id, name } }, i) => (
            <span key={id}>
              {i > 0 && ', '}
              <bdi>{name}</bdi>
            </span>
          ))}
          {others.length > MOST_NAMED && ` and ${others.length - MOST_NAMED} more`}: choose their sheets.
        </p>
      )}
    </div>
  );
}

/** Lifters that are named at once. */
const MOST_NAMED = 12;
