/** Who the invented studies are and what each compared: everything that is not drawn at random. */
import { meanRepetitions } from '../../src/evidence/repetitions.ts';
import type {
  BEYOND_FAILURE,
  CONCERNS,
  DESIGNS,
  FAILURE_DEFINITIONS,
  RESERVE_BASES,
  SEXES,
  TRAINING_STATUSES,
} from '../../src/evidence/vocabulary.ts';

export interface PlannedArm {
  readonly load: number;
  readonly reserve: number;
  readonly beyond: Extract<(typeof BEYOND_FAILURE)[number], 'none' | 'partials' | 'load-drops'>;
}

export interface PlannedStudy {
  readonly name: string;
  readonly year: number;
  readonly design: (typeof DESIGNS)[number];
  readonly concerns: (typeof CONCERNS)[number];
  readonly status: (typeof TRAINING_STATUSES)[number];
  readonly sex: (typeof SEXES)[number];
  readonly definition: (typeof FAILURE_DEFINITIONS)[number];
  readonly basis: (typeof RESERVE_BASES)[number];
  readonly exercise: Exercise;
  readonly reporting: Reporting;
  readonly arms: readonly PlannedArm[];
  readonly growth: boolean;
  /** Growth measured in the exercise's second muscle too. */
  readonly secondMuscle: boolean;
  readonly strength: boolean;
  /** Hours after the session at which performance was measured; empty without fatigue. */
  readonly hours: readonly number[];
}

export interface Exercise {
  readonly name: string;
  readonly joints: 'single' | 'multi';
  /** The first is measured in every study of growth, the second in three of five. */
  readonly muscles: readonly [string, string];
}

/** The ways in which papers report a change. */
const REPORTINGS = [
  'means, SDs and correlation',
  'means and SDs',
  'change SD',
  'change SE',
  'change interval',
  'change t',
  'change p',
  'three SDs',
  'log ratio',
  'standardised',
] as const;
export type Reporting = (typeof REPORTINGS)[number];

const BIRDS = [
  'Plover',
  'Wren',
  'Heron',
  'Curlew',
  'Dunlin',
  'Siskin',
  'Lapwing',
  'Osprey',
  'Swift',
  'Linnet',
  'Avocet',
  'Bittern',
  'Chough',
  'Dipper',
  'Egret',
  'Fieldfare',
  'Gannet',
  'Hobby',
  'Jackdaw',
  'Kestrel',
  'Lark',
  'Magpie',
  'Nightjar',
  'Oriole',
  'Pipit',
  'Quail',
  'Redstart',
  'Shrike',
  'Teal',
  'Turnstone',
  'Wagtail',
  'Warbler',
  'Whimbrel',
  'Woodcock',
  'Yellowhammer',
  'Kittiwake',
  'Bunting',
  'Crane',
  'Dotterel',
  'Eider',
  'Finch',
  'Grebe',
  'Ibis',
  'Knot',
  'Martin',
  'Petrel',
  'Rail',
  'Tern',
] as const;

const EXERCISES: readonly Exercise[] = [
  { name: 'leg press', joints: 'multi', muscles: ['quadriceps', 'gluteus maximus'] },
  { name: 'bench press', joints: 'multi', muscles: ['pectoralis major', 'triceps brachii'] },
  { name: 'leg extension', joints: 'single', muscles: ['rectus femoris', 'vastus lateralis'] },
  { name: 'arm curl', joints: 'single', muscles: ['biceps brachii', 'brachialis'] },
  { name: 'squat', joints: 'multi', muscles: ['quadriceps', 'gluteus maximus'] },
  { name: 'seated row', joints: 'multi', muscles: ['latissimus dorsi', 'biceps brachii'] },
];

/** Reserves compared inside a study of one band of loads. */
const RESERVES: readonly (readonly number[])[] = [
  [0, 2, 5],
  [0, 3, 7],
  [0, 1, 4],
  [0, 4, 8],
  [0, 1, 6],
  [0, 3, 10],
];

/**
 * Repetitions between two arms of a study that both stop short of failure: what is reported of them, which is off by
 * MOST_MISREPORTED at most, still tells them apart.
 */
const LEAST_APART = 3;
export const MOST_MISREPORTED = 1;

const LIGHT_LOADS = [30, 40, 50, 35, 25, 45] as const;
const HEAVY_LOADS = [75, 80, 70, 85, 65, 90] as const;

/** Studies of growth come first; the rest measured fatigue. */
const GROWTH_STUDIES = 28;

const pick = <T>(list: readonly T[], i: number): T => list[i % list.length];

/** The 48 studies, in the order of their years. */
export function planStudies(): readonly PlannedStudy[] {
  return BIRDS.map((bird, i) => {
    const growth = i < GROWTH_STUDIES;
    const year = 1996 + ((i * 11) % 29);
    const design = pick(['parallel', 'within-person', 'parallel', 'crossover'] as const, i);
    return {
      name: `${bird} ${year}`,
      year,
      // Two courses of training cannot be had of the same muscle: growth studies do not cross over.
      design: growth && design === 'crossover' ? 'within-person' : design,
      concerns: pick(['low', 'some', 'some', 'high', 'low'] as const, i),
      // As many studies of fatigue with either: recovery is fitted apart.
      status: growth
        ? pick(['untrained', 'trained', 'trained', 'untrained', 'trained'] as const, i)
        : pick(['untrained', 'trained'] as const, i),
      sex: pick(['male', 'mixed', 'female'] as const, i + Math.floor(i / 3)),
      definition: pick(['muscular', 'full range', 'technique', 'muscular', 'task'] as const, i),
      basis: pick(
        ['reported', 'prescribed', 'share-of-maximum', 'velocity-loss', 'load-table', 'prescribed'] as const,
        i + Math.floor(i / 6),
      ),
      exercise: pick(EXERCISES, i * 5 + Math.floor(i / 6)),
      // A standardised change alone has no log ratio: of fatigue, which is read by that only, none is reported so.
      reporting: growth ? pick(REPORTINGS, i * 3) : pick(REPORTINGS.slice(0, -1), i * 2),
      arms: growth ? growthArms(i) : fatigueArms(i),
      growth,
      secondMuscle: i % 5 < 3,
      strength: growth && i % 3 !== 1,
      hours: growth
        ? []
        : pick(
            [
              [1, 24, 48],
              [4, 24, 48, 72],
              [1, 24, 72],
            ],
            i,
          ),
    };
  });
}

/** Heavy, light or both in turn; two studies of three add an arm that went beyond failure. */
function growthArms(i: number): readonly PlannedArm[] {
  const reserves = pick(RESERVES, i);
  const arm = (load: number, reserve: number): PlannedArm => ({ load, reserve, beyond: 'none' });
  const light = pick(LIGHT_LOADS, Math.floor(i / 2));
  const heavy = pick(HEAVY_LOADS, Math.floor(i / 2));
  const kind = pick(['heavy', 'light', 'both', 'heavy', 'both', 'light', 'heavy'] as const, i);
  const feasible = (load: number) => {
    const most = Math.min(reserves[reserves.length - 1], mostReserve(load));
    return [...reserves.filter((reserve) => reserve === 0 || reserve <= most - LEAST_APART), most];
  };
  const extremes = (load: number) => feasible(load).filter((_, place, all) => place === 0 || place === all.length - 1);
  const loads = kind === 'both' ? [light, heavy] : [kind === 'light' ? light : heavy];
  const compared = kind === 'both' ? extremes : feasible;
  const arms = loads.flatMap((load) => compared(load).map((reserve) => arm(load, reserve)));
  if (i % 3 === 0) return arms;
  const beyond = i % 3 === 1 ? 'partials' : 'load-drops';
  return [...arms, { load: loads[0], reserve: 0, beyond }];
}

/** One repetition at least is done: what is possible at the load, less one. */
function mostReserve(load: number): number {
  return Math.floor((meanRepetitions(load) ?? Number.NaN) - 1);
}

function fatigueArms(i: number): readonly PlannedArm[] {
  const load = pick(HEAVY_LOADS, i);
  return pick(
    [
      [0, 3],
      [0, 5],
      [0, 2, 4],
    ],
    i,
  ).map((reserve) => ({ load, reserve, beyond: 'none' as const }));
}
