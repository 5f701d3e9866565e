/**
 * Changes of a draft that move or clear what was entered. Each comes with how it is taken back, which leaves alone what
 * was entered elsewhere since.
 */
import { COLUMN_WORDS } from '../../evidence/columnWords.ts';
import type { ArmColumn } from '../../evidence/schema.ts';
import { isBlank } from './cells.ts';
import { EXTRAS, type ExtraName, isShown, REPORTS, type ReportName } from './kinds.ts';
import { type ArmDraft, changeMeasure, type Place, readPlace, type StudyDraft, writePlace } from './studyDraft.ts';

export interface Change {
  readonly draft: StudyDraft;
  /** null where nothing that was entered went away. */
  readonly undo: { readonly what: string; readonly restore: (now: StudyDraft) => StudyDraft } | null;
}

export function addArm(draft: StudyDraft, id: number): StudyDraft {
  return { ...draft, arms: [...draft.arms, { id, cells: {} }] };
}

/** A measure for which the same kinds of number are printed as for the last one. */
export function addMeasure(draft: StudyDraft, id: number): StudyDraft {
  const last = draft.measures[draft.measures.length - 1];
  return { ...draft, measures: [...draft.measures, { id, cells: {}, reports: last.reports, own: [], results: {} }] };
}

export function removeArm(draft: StudyDraft, id: number): Change {
  const place = draft.arms.findIndex((arm) => arm.id === id);
  if (place < 0 || draft.arms.length < 2) return { draft, undo: null };
  const arm = draft.arms[place];
  const results = new Map(draft.measures.map((measure) => [measure.id, measure.results[id]]));
  const without: StudyDraft = {
    ...draft,
    arms: draft.arms.filter((one) => one !== arm),
    measures: draft.measures.map((measure) => {
      const { [id]: _, ...rest } = measure.results;
      return { ...measure, results: rest };
    }),
  };
  const restore = (now: StudyDraft): StudyDraft => ({
    ...now,
    arms: now.arms.toSpliced(place, 0, arm),
    measures: now.measures.map((measure) => {
      const texts = results.get(measure.id);
      return texts ? { ...measure, results: { ...measure.results, [id]: texts } } : measure;
    }),
  });
  const wasBlank = isBlank(arm.cells) && [...results.values()].every(isBlank);
  return { draft: without, undo: wasBlank ? null : { what: `The arm ${nameArm(arm)} was removed.`, restore } };
}

export function removeMeasure(draft: StudyDraft, id: number): Change {
  const place = draft.measures.findIndex((measure) => measure.id === id);
  if (place < 0 || draft.measures.length < 2) return { draft, undo: null };
  const measure = draft.measures[place];
  const restore = (now: StudyDraft) => ({ ...now, measures: now.measures.toSpliced(place, 0, measure) });
  const wasBlank = isBlank(measure.cells) && Object.values(measure.results).every(isBlank);
  const what = `The measure ${measure.cells.measure || 'without a name'} was removed.`;
  return {
    draft: { ...draft, measures: draft.measures.filter((one) => one !== measure) },
    undo: wasBlank ? null : { what, restore },
  };
}

/** A fact of all arms becomes one of each arm, which keeps what was entered. */
export function tellApart(draft: StudyDraft, column: ArmColumn): StudyDraft {
  if (draft.apart.includes(column)) return draft;
  const text = draft.cells[column] ?? '';
  return {
    ...draft,
    cells: { ...draft.cells, [column]: '' },
    apart: [...draft.apart, column],
    arms: draft.arms.map((arm) => ({ ...arm, cells: { ...arm.cells, [column]: text } })),
  };
}

/** A fact of each arm becomes one of all: what the first arm has of it that has any. */
export function tellTogether(draft: StudyDraft, column: ArmColumn): Change {
  if (!draft.apart.includes(column)) return { draft, undo: null };
  const texts = draft.arms.map(({ cells }) => cells[column] ?? '');
  const text = texts.find((one) => one.trim() !== '') ?? '';
  const { draft: cleared } = clear(
    draft,
    draft.arms.map(({ id }) => ({ of: 'arm', arm: id, column })),
  );
  const together: StudyDraft = {
    ...cleared,
    cells: { ...cleared.cells, [column]: text },
    apart: draft.apart.filter((name) => name !== column),
  };
  if (texts.every((one) => one === text)) return { draft: together, undo: null };
  const ofArms = new Map(draft.arms.map((arm, i) => [arm.id, texts[i]]));
  const restore = (now: StudyDraft): StudyDraft => ({
    ...tellApart(now, column),
    arms: now.arms.map((arm) => ({ ...arm, cells: { ...arm.cells, [column]: ofArms.get(arm.id) ?? '' } })),
  });
  const what = `“${COLUMN_WORDS[column].label}” is ${text || 'empty'} in all arms now.`;
  return { draft: together, undo: { what, restore } };
}

/** Lets results of a measure have a cell of their own for a column, or clears those that they have. */
export function setOwn(draft: StudyDraft, measure: number, column: ArmColumn, isOwn: boolean): Change {
  const set = (to: StudyDraft, on: boolean) =>
    changeMeasure(to, measure, (one) => ({
      ...one,
      own: [...one.own.filter((name) => name !== column), ...(on ? [column] : [])],
    }));
  if (isOwn) return { draft: set(draft, true), undo: null };
  const places = draft.arms.map(({ id }): Place => ({ of: 'result', measure, arm: id, column }));
  return clearing(set(draft, false), places, COLUMN_WORDS[column].label, (now) => set(now, true));
}

/** Shows what a kind of number needs, or clears and hides it. */
export function setReport(draft: StudyDraft, measure: number, name: ReportName, isReported: boolean): Change {
  const found = draft.measures.find(({ id }) => id === measure);
  const kind = REPORTS.find((one) => one.name === name);
  if (!found || !kind) return { draft, undo: null };
  const others = found.reports.filter((other) => other !== name);
  const set = (to: StudyDraft, reports: readonly ReportName[]) =>
    changeMeasure(to, measure, (one) => ({ ...one, reports }));
  if (isReported) return { draft: set(draft, [...others, name]), undo: null };
  const hidden = kind.columns.filter((column) => !isShown(REPORTS, others, column));
  const places = hidden.flatMap((column): readonly Place[] => [
    { of: 'measure', measure, column },
    ...draft.arms.map(({ id }): Place => ({ of: 'result', measure, arm: id, column })),
  ]);
  return clearing(
    set(draft, others),
    places,
    `${kind.group}: ${kind.label}`,
    (now) => setReport(now, measure, name, true).draft,
  );
}

/** Shows facts that few papers print, or clears and hides them. */
export function setExtra(draft: StudyDraft, name: ExtraName, isPrinted: boolean): Change {
  const kind = EXTRAS.find((one) => one.name === name);
  const others = draft.extras.filter((other) => other !== name);
  if (!kind) return { draft, undo: null };
  if (isPrinted) return { draft: { ...draft, extras: [...others, name] }, undo: null };
  const places = kind.columns.flatMap((column): readonly Place[] => [
    { of: 'study', column },
    ...draft.arms.map(({ id }): Place => ({ of: 'arm', arm: id, column })),
  ]);
  return clearing({ ...draft, extras: others }, places, kind.label, (now) => setExtra(now, name, true).draft);
}

/** Clears places of a draft; taken back, `before` and then the texts come again. */
function clearing(
  draft: StudyDraft,
  places: readonly Place[],
  label: string,
  before: (now: StudyDraft) => StudyDraft,
): Change {
  const { draft: cleared, texts } = clear(draft, places);
  if (texts.length === 0) return { draft: cleared, undo: null };
  return { draft: cleared, undo: { what: `${label}: cleared.`, restore: (now) => putBack(before(now), texts) } };
}

type Texts = readonly (readonly [Place, string])[];

function clear(draft: StudyDraft, places: readonly Place[]): { readonly draft: StudyDraft; readonly texts: Texts } {
  const texts = places
    .map((place) => [place, readPlace(draft, place)] as const)
    .filter(([, text]) => text.trim() !== '');
  return { draft: texts.reduce((now, [place]) => writePlace(now, place, ''), draft), texts };
}

/** Puts texts where nothing has been entered since. */
export function putBack(draft: StudyDraft, texts: Texts): StudyDraft {
  return texts.reduce(
    (now, [place, text]) => (readPlace(now, place).trim() === '' ? writePlace(now, place, text) : now),
    draft,
  );
}

export function nameArm({ cells: { arm } }: ArmDraft): string {
  return arm?.trim() ? `“${arm.trim()}”` : 'without a name';
}
