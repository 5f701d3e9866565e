/** Plans as files: JSON, CSV, and a protocol's paragraphs; what was assumed stands in each. */
import Papa from 'papaparse';
import { DEMONSTRATION_NOTE } from '../../evidence/demonstration.ts';
import type { PlanAnswer } from '../../model/plan/planAnswer.ts';
import type { PlanAssumptions } from '../../model/plan/plannedRows.ts';
import type { PlanningFacts } from '../../model/plan/planningFacts.ts';
import type { BandName } from '../../model/result.ts';
import { stateSettings } from '../settingsWords.ts';
import type { TakeHomeFile } from '../takeHome/takeHome.ts';
import { listAdjusted } from './assumedWords.ts';
import { assumedOfMeasure, type PlanName } from './planWords.ts';

export interface NamedAnswer {
  readonly name: PlanName;
  readonly answer: PlanAnswer;
}

/** Where the numbers come from. */
export interface FileContext {
  /** Name of the table's file. */
  readonly table: string;
  /** First characters of the table's SHA-256; “unknown” where that is not known. */
  readonly dataVersion: string;
  readonly isDemonstration: boolean;
  /** Of the page with these plans; empty where it is not known yet. */
  readonly address: string;
}

export const INVENTED = 'the studies behind these numbers are invented';
const NOT_CLAIMED =
  'Expected widths are no promise and no power; nothing here judges ethics or safety. Registered protocols and local review boards come first.';

export function nameFile({ isDemonstration, dataVersion }: FileContext, ending: string): string {
  return `${isDemonstration ? 'demonstration-' : ''}plans-${dataVersion}${ending}`;
}

export function writePlanJson(
  facts: PlanningFacts,
  answers: readonly NamedAnswer[],
  context: FileContext,
): TakeHomeFile {
  const { isDemonstration, ...from } = context;
  const content = {
    ...(isDemonstration ? { demonstration: INVENTED } : {}),
    notClaimed: NOT_CLAIMED,
    from: { ...from, rows: facts.rows, studies: facts.studies },
    settings: facts.settings,
    ...(facts.settings.adjust.length > 0 ? { adjustedFor: answers.map((one) => listAdjustedOf(one, facts)) } : {}),
    plans: answers.map(({ name, answer }) => ({ name, ...answer })),
  };
  return {
    name: nameFile(context, '.json'),
    type: 'application/json',
    text: `${JSON.stringify(content, null, 2)}\n`,
  };
}

/** In words, by the plan's name. */
function listAdjustedOf({ name, answer: { plan, expectation } }: NamedAnswer, { settings }: PlanningFacts) {
  const { assumptions } = expectation;
  return { plan: name, assumed: assumptions ? listAdjusted(assumptions, plan, settings) : [] };
}

type CsvRecord = Readonly<Record<string, string | number | null | undefined>>;

/** A line a plan and band, with all digits. */
export function writePlanCsv(
  { settings }: Pick<PlanningFacts, 'settings'>,
  answers: readonly NamedAnswer[],
  context: FileContext,
): TakeHomeFile {
  const records = answers.flatMap(({ name, answer: { plan, expectation, limits } }): CsvRecord[] => {
    const arms = plan.arms.map(({ load, reserve, people }) => `${load} ${reserve} ${people}`).join('; ');
    const { assumptions } = expectation;
    const common = {
      plan: name,
      design: plan.design,
      arms_load_reserve_people: arms,
      people: expectation.people,
      measure: assumptions?.measure,
      weeks: assumptions?.weeks,
      coefficient_of_variation: assumptions?.coefficientOfVariation.value,
      correlation: assumptions?.correlation.value,
    };
    if (expectation.bands.length === 0) return [{ ...common, reason: expectation.problems.join('; ') }];
    return expectation.bands.map(
      ({
        band,
        arms: count,
        before,
        after,
        narrowingPerPerson,
        chanceOfMove,
        modelError,
        tau2,
        omega2,
        kept,
        reason,
      }) => ({
        ...common,
        loads: band,
        ...(assumptions ? listAssumed(assumptions, band, settings) : {}),
        arms_in_these_loads: count,
        between_studies: tau2,
        between_rows: omega2,
        today_estimate: before.point,
        today_low: before.low,
        today_high: before.high,
        today_width: before.width,
        expected_estimate: after?.point,
        expected_low: after?.low,
        expected_high: after?.high,
        expected_width: after?.width,
        outcomes_without_target: after?.refused,
        outcomes_without_upper_end: after?.unbounded,
        width_without_end_of_people: limits.find((one) => one.band === band)?.target?.width,
        narrower_per_person: narrowingPerPerson,
        chance_of_other_whole_repetitions: chanceOfMove,
        model_error_today: modelError?.before,
        model_error_expected: modelError?.after,
        ...Object.fromEntries(
          kept.flatMap(({ before: { reserve, low, high }, after: then }) => [
            [`kept_at_${reserve}_today_low`, low],
            [`kept_at_${reserve}_today_high`, high],
            [`kept_at_${reserve}_expected_low`, then.low],
            [`kept_at_${reserve}_expected_high`, then.high],
          ]),
        ),
        reason,
      }),
    );
  });
  const fields = [...new Set(records.flatMap((record) => Object.keys(record)))];
  const rows = records.map((record) => ({
    ...record,
    ...(context.isDemonstration ? { note: DEMONSTRATION_NOTE } : {}),
  }));
  const text = Papa.unparse(
    { fields: context.isDemonstration ? [...fields, 'note'] : fields, data: rows },
    { newline: '\n' },
  );
  return { name: nameFile(context, '.csv'), type: 'text/csv', text: `${text}\n` };
}

/** What the planned arms are given of covariates that are adjusted for; weeks stand in every line. */
function listAssumed(
  { sets, sessionsPerWeek, bands }: PlanAssumptions,
  name: BandName,
  { adjust }: PlanningFacts['settings'],
): CsvRecord {
  const { trainingStatus = null, load = null } = bands.find(({ band }) => band === name) ?? {};
  const weekly = sets === null || sessionsPerWeek === null ? null : sets * sessionsPerWeek;
  return {
    ...(adjust.includes('training-status') ? { training_status: trainingStatus } : {}),
    ...(adjust.includes('weekly-sets') ? { weekly_sets: weekly } : {}),
    ...(adjust.includes('load') ? { load_pct_1rm_of_arms_without: load } : {}),
  };
}

/** What every file says of where its numbers come from and what was assumed, a sentence each. */
export function stateAssumed(
  answers: readonly NamedAnswer[],
  { table, dataVersion, address }: FileContext,
  settings: PlanningFacts['settings'],
): readonly string[] {
  return [
    `From the table ${table}, version ${dataVersion}: ${address}`,
    ...answers.map(({ name, answer: { plan, expectation } }) =>
      expectation.assumptions
        ? `Plan ${name}: ${[assumedOfMeasure(expectation.assumptions), ...listAdjusted(expectation.assumptions, plan, settings)].join('; ')}.`
        : `Plan ${name} cannot be worked out: ${expectation.problems.join('; ')}.`,
    ),
    NOT_CLAIMED,
  ];
}

/** Settings that stand behind the numbers, in one sentence. */
export function listSettings({ settings }: PlanningFacts): string {
  return stateSettings(settings)
    .map(([name, value]) => `${name}: ${value}`)
    .join('; ');
}
