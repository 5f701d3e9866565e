/** What is done with the study in hand. */
import type { ReadonlySignal, Signal } from '@preact/signals';
import { COLUMN_WORDS } from '../../evidence/columnWords.ts';
import type { ArmColumn } from '../../evidence/schema.ts';
import { countOf } from '../../numerics/countOf.ts';
import * as changes from './changeDraft.ts';
import { EXTRAS, type ExtraName, isShown, kindsWith, REPORTS, type ReportName } from './kinds.ts';
import { fillGrid, type Grid } from './pasteBlock.ts';
import { setPeopleByDesign } from './people.ts';
import { estimateFromLoad, estimateFromShare, type ReserveColumn, type ReserveFound } from './reserveEstimate.ts';
import type { Curating } from './savedForm.ts';
import { idOf, type Place, placeAbove, readPlace, type StudyDraft, writePlace } from './studyDraft.ts';

/** A step that can be taken back. */
export interface Undo {
  readonly what: string;
  readonly restore: (now: Curating) => Curating;
}

interface Around {
  readonly curating: Signal<Curating>;
  readonly draft: ReadonlySignal<StudyDraft>;
  readonly edited: Signal<string | null>;
  readonly place: Signal<Place | null>;
  readonly done: Signal<string>;
  readonly change: (part: Partial<Curating>) => void;
  /** Keeps a step that can be taken back, and says what was done. */
  readonly remember: (undo: Undo | null, said?: string) => void;
}

export function createDraftActions({ curating, draft, edited, place, done, change, remember }: Around) {
  const put = (next: StudyDraft) => change({ studies: replaceStudy(curating.value.studies, next) });
  const make = ({ draft: next, undo }: changes.Change, said = '') => {
    const { id } = next;
    put(next);
    remember(undo && { what: undo.what, restore: (now) => onStudy(now, id, undo.restore) }, said);
  };
  const newId = () => {
    const { nextId } = curating.value;
    change({ nextId: nextId + 1 });
    return nextId;
  };

  const enter = (at: Place, text: string) => {
    done.value = '';
    put(writePlace(draft.value, at, text.replace(/[\r\n]+/gu, ' ')));
  };
  const take = (at: Place) => {
    edited.value = idOf(at);
    place.value = at;
  };
  const addArm = () => {
    const id = newId();
    make({ draft: changes.addArm(draft.value, id), undo: null }, 'An arm was added.');
    return id;
  };
  const addMeasure = () => {
    const id = newId();
    make({ draft: changes.addMeasure(draft.value, id), undo: null }, 'A measure was added.');
    return id;
  };
  const removeArm = (id: number) => make(changes.removeArm(draft.value, id));
  const removeMeasure = (id: number) => make(changes.removeMeasure(draft.value, id));
  const setApart = (column: ArmColumn, isApart: boolean) =>
    make(
      isApart
        ? { draft: changes.tellApart(draft.value, column), undo: null }
        : changes.tellTogether(draft.value, column),
    );
  const setOwn = (measure: number, column: ArmColumn, isOwn: boolean) =>
    make(changes.setOwn(draft.value, measure, column, isOwn));
  const setReport = (measure: number, name: ReportName, isReported: boolean) =>
    make(changes.setReport(draft.value, measure, name, isReported));
  const setExtra = (name: ExtraName, isPrinted: boolean) => make(changes.setExtra(draft.value, name, isPrinted));
  const setByDesign = (byDesign: boolean) => make(setPeopleByDesign(draft.value, byDesign));

  /** Makes sure that the entry of a place is shown. */
  const reveal = (at: Place) => {
    if (at.of === 'measure' || at.of === 'result') {
      const measure = draft.value.measures.find(({ id }) => id === at.measure);
      const [name] = kindsWith(REPORTS, at.column);
      if (measure && name && !isShown(REPORTS, measure.reports, at.column)) setReport(at.measure, name, true);
    } else {
      const [name] = kindsWith(EXTRAS, at.column);
      if (name && !draft.value.extras.includes(name)) setExtra(name, true);
    }
  };

  /** Puts copied cells into a grid from an entry on. */
  const paste = (grid: Grid, row: number, cell: number, block: readonly (readonly string[])[]) => {
    const { draft: next, restore, filled, left, commas } = fillGrid(draft.value, grid, row, cell, block);
    const said = [
      `${countOf(filled, 'cell')} pasted.`,
      commas > 0 ? `${countOf(commas, 'decimal comma')} written as ${commas === 1 ? 'a point' : 'points'}.` : '',
      left > 0 ? `${countOf(left, 'cell')} left out: no entry takes ${left === 1 ? 'it' : 'them'}.` : '',
    ];
    make(
      { draft: next, undo: filled > 0 ? { what: `${countOf(filled, 'cell')} pasted.`, restore } : null },
      said.filter(Boolean).join(' '),
    );
  };

  const askReserve = (name: ReserveColumn, text: string) => {
    change({ reserve: { ...curating.value.reserve, [name]: text.replace(/[\r\n]+/gu, ' ') } });
  };
  const takeReserveName = (id: string) => {
    edited.value = id;
  };
  /** The fact of an arm, whether it is the same for all or not. */
  const factOf = (arm: number, column: ArmColumn) =>
    readPlace(draft.value, placeAbove(draft.value, { arm, measure: draft.value.measures[0].id }, column));
  const fromLoad = (arm: number) =>
    estimateFromLoad(
      { load_pct_1rm: factOf(arm, 'load_pct_1rm'), reps_per_set: factOf(arm, 'reps_per_set') },
      curating.value.reserve,
    );
  const fromShare = () => estimateFromShare(curating.value.reserve);
  /** Fills an estimate in for one arm, whose reserve is then its own. */
  const useReserve = (arm: number, found: ReserveFound) => {
    const before = draft.value;
    const columns = ['reserve_reps', 'reserve_sd', 'reserve_basis'] as const;
    const texts = columns.map((column) => [{ of: 'arm', arm, column } as const, factOf(arm, column)] as const);
    const apart = columns.reduce(changes.tellApart, before);
    const next = columns.reduce((now, column) => writePlace(now, { of: 'arm', arm, column }, found[column]), apart);
    const restore = (now: StudyDraft) => texts.reduce((one, [at, text]) => writePlace(one, at, text), now);
    const had = texts.some(([, text]) => text.trim() !== '');
    const filled = columns.map((column) => `${COLUMN_WORDS[column].label}: ${found[column]}`).join(', ');
    make({ draft: next, undo: had ? { what: 'A reserve was estimated.', restore } : null }, `Filled in: ${filled}.`);
  };

  return {
    enter,
    take,
    addArm,
    addMeasure,
    removeArm,
    removeMeasure,
    setApart,
    setOwn,
    setReport,
    setExtra,
    setByDesign,
    reveal,
    paste,
    askReserve,
    takeReserveName,
    factOf,
    fromLoad,
    fromShare,
    useReserve,
  };
}

function replaceStudy(studies: readonly StudyDraft[], next: StudyDraft): readonly StudyDraft[] {
  return studies.map((study) => (study.id === next.id ? next : study));
}

/** Takes a step back in a study, where it is still there. */
function onStudy(now: Curating, id: number, restore: (draft: StudyDraft) => StudyDraft): Curating {
  return { ...now, studies: now.studies.map((study) => (study.id === id ? restore(study) : study)) };
}
