/** How far the expected widths of planned studies are from those of simulated ones that are fitted in full. */
import type { Arm } from '../../src/evidence/schema.ts';
import { expectPlan } from '../../src/model/plan/expectPlan.ts';
import { type PlannedDesign, type PlannedStudy, planStudy } from '../../src/model/plan/plannedStudy.ts';
import { openPlanning } from '../../src/model/plan/planningBase.ts';
import { simulatePlan } from '../../src/model/plan/simulatePlan.ts';
import type { BandName } from '../../src/model/result.ts';
import { defaultSettings, type Settings } from '../../src/model/settings.ts';
import { drawTable } from './planTables.ts';

/**
 * Reserves, design and people an arm of twenty plans: near the target, far from it, few people and many, 1 to 4 arms.
 */
export const PLANS: readonly (readonly [PlannedDesign, readonly number[], number])[] = [
  ['parallel', [0, 4], 10],
  ['parallel', [0, 4], 40],
  ['parallel', [0, 1], 10],
  ['parallel', [0, 1], 40],
  ['parallel', [0, 2], 20],
  ['parallel', [0, 10], 20],
  ['parallel', [2, 7], 20],
  ['parallel', [1, 3], 100],
  ['parallel', [0], 30],
  ['parallel', [2], 30],
  ['parallel', [0, 2, 5], 15],
  ['parallel', [0, 3, 8], 50],
  ['parallel', [0, 1, 2, 4], 12],
  ['within-person', [0, 4], 15],
  ['within-person', [0, 1], 15],
  ['within-person', [0, 2], 40],
  ['within-person', [2, 3], 20],
  ['within-person', [0, 2, 7], 12],
  ['within-person', [1, 5], 60],
  ['within-person', [0, 10], 200],
];

/** Studies drawn for each plan. */
export const TABLES = 1000;

/** Usual spread of tables that print none. */
const SPREAD = { coefficientOfVariation: 0.14, correlation: 0.95 } as const;

export interface AgreementTable {
  readonly name: string;
  readonly arms: readonly Arm[];
  readonly settings: Settings;
  readonly bands: readonly BandName[];
}

/** The shipped table by its two bands, and tables of 8 and 30 studies around four truths. */
export function listTables(shipped: readonly Arm[]): readonly AgreementTable[] {
  const drawn = [8, 30].flatMap((studies) =>
    (['line', 'saturating', 'plateau', 'parabola'] as const).map(
      (truth, i): AgreementTable => ({
        name: `${studies} studies, ${truth}`,
        arms: drawTable(truth, 'near', studies, SEED + 100 * studies + i),
        settings: { ...defaultSettings, split: null },
        bands: ['all'],
      }),
    ),
  );
  return [{ name: 'shipped', arms: shipped, settings: defaultSettings, bands: ['light', 'heavy'] }, ...drawn];
}

export const SEED = 20_261_126;

export interface Agreement {
  readonly table: string;
  readonly band: BandName;
  readonly plan: string;
  /**
   * Median widths, repetitions: today's, expected and simulated, and the standard error of the last; null where there
   * is none.
   */
  readonly before: number | null;
  readonly expected: number | null;
  readonly simulated: number | null;
  readonly simulatedError: number | null;
  /** Expected over simulated, less 1. */
  readonly miss: number | null;
  /** Shares of outcomes without a target (all, where no fit would be made), and of those whose interval has no upper end. */
  readonly refused: { readonly expected: number; readonly simulated: number };
  readonly unbounded: { readonly expected: number; readonly simulated: number };
  readonly chance: { readonly expected: number | null; readonly simulated: number; readonly error: number };
}

export function comparePlan(
  { name, arms, settings }: AgreementTable,
  band: BandName,
  index: number,
  tables: number,
): Agreement {
  const planning = openPlanning(arms, settings);
  const [design, reserves, people] = PLANS[index];
  const study = planStudy(
    design,
    reserves.map((reserve) => ({ reserve, load: band, people })),
  );
  const isPrinted = planning.measures[0]?.coefficientOfVariation;
  const plan: PlannedStudy = isPrinted ? study : { ...study, ...SPREAD };
  const expected = expectPlan(planning, plan).bands.find((one) => one.band === band);
  const simulated = simulatePlan(planning, plan, tables, SEED + index).find((one) => one.band === band);
  if (!expected || !simulated) throw new Error(`${name} has no fit of ${band} loads, or the plan has problems`);
  const { after } = expected;
  const [e, s] = [after?.width ?? null, simulated.after.width];
  return {
    table: name,
    band,
    plan: `${design} ${reserves.join(', ')} of ${people}`,
    before: expected.before.width,
    expected: e,
    simulated: s,
    simulatedError: simulated.widthError,
    miss: e === null || s === null ? null : e / s - 1,
    refused: { expected: after?.refused ?? 1, simulated: simulated.after.refused },
    unbounded: { expected: after?.unbounded ?? 0, simulated: simulated.after.unbounded },
    chance: {
      expected: expected.chanceOfMove,
      simulated: simulated.chanceOfMove,
      error: simulated.chanceError,
    },
  };
}
