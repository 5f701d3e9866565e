/** Who is the same people: said by the design, or by hand. */
import type { Change } from './changeDraft.ts';
import { cohortByDesign } from './cohorts.ts';
import type { StudyDraft } from './studyDraft.ts';
import { letDesignSayPeople } from './takeUp.ts';

/** Lets a curator name the groups of people, starting from those of the design, or leaves them to the design again. */
export function setPeopleByDesign(draft: StudyDraft, byDesign: boolean): Change {
  if (byDesign === draft.peopleByDesign) return { draft, undo: null };
  if (!byDesign) {
    return {
      draft: {
        ...draft,
        peopleByDesign: false,
        apart: [...draft.apart, 'cohort'],
        arms: draft.arms.map((arm) => ({ ...arm, cells: { ...arm.cells, cohort: cohortByDesign(draft, arm.id) } })),
      },
      undo: null,
    };
  }
  const restore = (now: StudyDraft): StudyDraft => ({
    ...now,
    peopleByDesign: false,
    cells: { ...now.cells, cohort: draft.cells.cohort ?? '' },
    apart: draft.apart.includes('cohort') ? [...now.apart, 'cohort'] : now.apart,
    arms: now.arms.map((arm) => {
      const before = draft.arms.find(({ id }) => id === arm.id);
      return { ...arm, cells: { ...arm.cells, cohort: before?.cells.cohort ?? '' } };
    }),
    measures: now.measures.map((measure) => {
      const before = draft.measures.find(({ id }) => id === measure.id);
      if (!before?.own.includes('cohort')) return measure;
      const results = Object.entries(measure.results).map(([arm, texts]) => [
        arm,
        { ...texts, cohort: before.results[Number(arm)]?.cohort ?? '' },
      ]);
      return { ...measure, own: [...measure.own, 'cohort' as const], results: Object.fromEntries(results) };
    }),
  });
  return {
    draft: letDesignSayPeople(draft),
    undo: { what: 'The groups of people follow from the design now.', restore },
  };
}
