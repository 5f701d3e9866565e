/**
 * State of the form that makes rows: the studies so far, the one in hand, what the table's readers say of them, and
 * what is done with them. All of it stays in this browser and outlives a reload.
 */
import { computed, signal } from '@preact/signals';
import { writeArms } from '../../evidence/writeTable.ts';
import { saveFile } from '../../ui/saveFile.ts';
import type { Cells } from './cells.ts';
import { createDraftActions, type Undo } from './draftActions.state.ts';
import { isBlankStudy } from './draftRows.ts';
import type { StudyRows } from './joinTables.ts';
import { keepForm } from './keptForm.state.ts';
import { readStudies } from './readStudies.ts';
import { type Curating, NOTHING_CURATED } from './savedForm.ts';
import { IDS_OF_START, type Place, type StudyDraft, startStudy } from './studyDraft.ts';
import { takeUpRows } from './takeUp.ts';

export const FILE_NAME = 'curated-arms.csv';
const CSV = 'text/csv;charset=utf-8';

export function createCurating() {
  const curating = signal<Curating>(NOTHING_CURATED);
  /** Steps that took something away, the last one at the end. */
  const undos = signal<readonly Undo[]>([]);
  /** What the last step did, for the status line. */
  const done = signal('');
  const kept = keepForm(curating);
  /** The entry that last had the focus: it stays explained until another has it, so that nothing moves under a click. */
  const edited = signal<string | null>(null);
  /** The same, where it is an entry of the study. */
  const place = signal<Place | null>(null);

  const draft = computed(() => findStudy(curating.value));
  const readings = computed(() => readStudies(curating.value.studies));
  const reading = computed(() => readings.value.get(draft.value.id) ?? NO_READING);
  const isEmpty = computed(() => isBlankStudy(draft.value));
  /** Studies that something is entered for. */
  const studies = computed(() => curating.value.studies.filter((study) => !isBlankStudy(study)));
  const rows = computed<readonly Cells[]>(() =>
    curating.value.studies.flatMap(({ id }) => readings.value.get(id)?.rows.map(({ cells }) => cells) ?? []),
  );
  const csv = computed(() => writeArms(rows.value));

  const change = (part: Partial<Curating>) => {
    curating.value = { ...curating.value, ...part };
  };
  const remember = (undo: Undo | null, said = '') => {
    if (undo) undos.value = [...undos.value, undo];
    done.value = said;
  };
  const takeBack = () => {
    const last = undos.value[undos.value.length - 1];
    if (!last) return;
    undos.value = undos.value.slice(0, -1);
    curating.value = last.restore(curating.value);
    done.value = `Taken back: ${last.what}`;
  };
  const actions = createDraftActions({ curating, draft, edited, place, done, change, remember });

  /** Puts another study in the form; one that is blank is left behind. */
  const open = (id: number) => {
    const left = curating.value.studies.filter((study) => study.id === id || !isBlankStudy(study));
    if (!left.some((study) => study.id === id)) return;
    change({ studies: left, inHand: id });
    place.value = null;
    done.value = `${nameStudy(findStudy(curating.value))} is in the form.`;
  };
  /** Starts a study, or goes to the one that is still blank. */
  const startNext = () => {
    const blank = curating.value.studies.find(isBlankStudy);
    const { nextId, studies: all } = curating.value;
    if (blank) change({ inHand: blank.id });
    else change({ studies: [...all, startStudy(nextId)], inHand: nextId, nextId: nextId + IDS_OF_START });
    place.value = null;
    done.value = 'The form is ready for another study.';
  };
  const remove = (id: number) => {
    const { studies: all, inHand } = curating.value;
    const at = all.findIndex((study) => study.id === id);
    if (at < 0) return;
    const study = all[at];
    change(withStudies(curating.value, all.toSpliced(at, 1)));
    remember({
      what: `${nameStudy(study)} was removed.`,
      restore: (now) => ({
        ...now,
        studies: now.studies.toSpliced(at, 0, study),
        inHand: inHand === id ? id : now.inHand,
      }),
    });
  };
  const removeAll = () => {
    const { studies: all, inHand } = curating.value;
    change(withStudies(curating.value, []));
    remember({
      what: 'All studies were removed.',
      restore: (now) => ({ ...now, studies: [...all, ...now.studies.filter((one) => !isBlankStudy(one))], inHand }),
    });
  };
  /** Puts a study of a table in the form. @param rows of it, as the table has them */
  const takeUp = (cells: readonly Cells[], from: NonNullable<StudyDraft['from']>) => {
    const here = curating.value.studies.find((one) => one.from?.study === from.study && one.from.table === from.table);
    if (here) {
      open(here.id);
      return;
    }
    const { draft: taken, nextId } = takeUpRows(cells, curating.value.nextId, from);
    const others = curating.value.studies.filter((study) => !isBlankStudy(study));
    change({ studies: [...others, taken], inHand: taken.id, nextId });
    place.value = null;
    done.value = `${from.study} of ${from.table} is in the form.`;
  };
  /** Rows of each study for a table; one that was taken from it takes its own place there. */
  const rowsFor = (table: string | null): readonly StudyRows[] =>
    curating.value.studies.map(({ id, from }) => ({
      replaces: from !== null && from.table === table ? from.study : null,
      rows: readings.value.get(id)?.rows.map(({ cells }) => cells) ?? [],
    }));
  /** Notes that the studies are in a table now: added again, they take their own place there. */
  const noteAdded = (table: string) =>
    change({
      studies: curating.value.studies.map((study) =>
        isBlankStudy(study) ? study : { ...study, from: { table, study: study.cells.study?.trim() ?? '' } },
      ),
    });
  const explain = (isExplained: boolean) => change({ isExplained });

  const csvOf = (withHeader: boolean) => (withHeader ? csv.value : csv.value.slice(csv.value.indexOf('\n') + 1));
  const download = () => saveFile({ name: FILE_NAME, type: CSV, text: csv.value });

  return {
    ...actions,
    curating,
    draft,
    studies,
    rows,
    isEmpty,
    readings,
    reading,
    csv,
    undos,
    done,
    kept,
    edited,
    place,
    open,
    startNext,
    remove,
    removeAll,
    takeUp,
    rowsFor,
    noteAdded,
    explain,
    takeBack,
    csvOf,
    download,
    connect: kept.connect,
  };
}

export type CuratingState = ReturnType<typeof createCurating>;

const NO_READING = { problems: [], needed: [], warnings: [], rows: [], empty: [] } as const;

export function nameStudy({ cells }: StudyDraft): string {
  return cells.study?.trim() || 'A study without a name';
}

function findStudy({ studies, inHand }: Curating): StudyDraft {
  return studies.find(({ id }) => id === inHand) ?? studies[0];
}

/** With other studies; the last one, or a blank one, is in hand where that in hand is gone. */
function withStudies(now: Curating, studies: readonly StudyDraft[]): Partial<Curating> {
  if (studies.length === 0) {
    return { studies: [startStudy(now.nextId)], inHand: now.nextId, nextId: now.nextId + IDS_OF_START };
  }
  const inHand = studies.some(({ id }) => id === now.inHand) ? now.inHand : studies[studies.length - 1].id;
  return { studies, inHand };
}
