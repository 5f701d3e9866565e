/** What planned arms are given of each covariate that the analysis adjusts for, in words. */
import { nameChoice } from '../../evidence/choiceWords.ts';
import { placeLoads } from '../../model/plan/plannedBands.ts';
import type { PlanAssumptions } from '../../model/plan/plannedRows.ts';
import type { PlannedStudy } from '../../model/plan/plannedStudy.ts';
import type { BandName } from '../../model/result.ts';
import type { Adjustment, Settings } from '../../model/settings.ts';
import { LOAD_NAMES } from '../../practice/loadNames.ts';
import { formatPlain } from '../format.ts';
import { nameAdjustment } from '../settingsWords.ts';

const NOT_SAID = 'not said in this table';

/** “training status trained before (as at least half of the rows there)”, a phrase each; none where nothing is adjusted for or no arm is planned. */
export function listAdjusted(
  assumptions: PlanAssumptions,
  plan: Pick<PlannedStudy, 'arms' | 'weeks'>,
  { adjust, split }: Pick<Settings, 'adjust' | 'split'>,
): readonly string[] {
  if (placeLoads(plan.arms, split).length === 0) return [];
  return adjust.map((name) => `${nameAdjustment(name)} ${SAID[name](assumptions, plan, split)}`);
}

type Say = (
  assumptions: PlanAssumptions,
  plan: Pick<PlannedStudy, 'arms' | 'weeks'>,
  split: Settings['split'],
) => string;

const SAID: Readonly<Record<Adjustment, Say>> = {
  load: ({ bands }, { arms }) => {
    const named = bands.filter(({ band }) => arms.some(({ load }) => load === band));
    if (named.length === 0) return 'as the arms say';
    const loads = named.map(
      ({ band, load }) => `${load === null ? NOT_SAID : `${formatPlain(load)}\u00a0% of 1RM`} for ${LOAD_NAMES[band]}`,
    );
    return `${loads.join(', ')} (the median of the rows there), where an arm says no per cent`;
  },
  'weekly-sets': ({ sets, sessionsPerWeek: sessions }) =>
    sets === null || sessions === null
      ? NOT_SAID
      : `${formatPlain(sets * sessions)} (${formatPlain(sets)} in a session times ${formatPlain(sessions)} sessions a week, the medians here)`,
  weeks: ({ weeks }, plan) =>
    weeks === null ? NOT_SAID : `${formatPlain(weeks)} (${plan.weeks === null ? 'the median here' : 'as planned'})`,
  'training-status': ({ bands }, { arms }, split) => {
    const placed: readonly BandName[] = placeLoads(arms, split);
    const told = bands.filter(({ band }) => placed.includes(band));
    const words = told.map(({ trainingStatus: status }) =>
      status === null ? NOT_SAID : `“${nameChoice('training_status', status)}”`,
    );
    const said =
      new Set(words).size === 1
        ? words[0]
        : words.map((word, i) => `${word} for ${LOAD_NAMES[told[i].band]}`).join(', ');
    return `${said} (as at least half of the rows there)`;
  },
};
