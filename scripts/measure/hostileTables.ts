/** Small tables that a careless reader could be misled by, with settings, drawn from a seed. */
import Papa from 'papaparse';
import { ARM_COLUMNS, type Arm } from '../../src/evidence/schema.ts';
import { readArms } from '../../src/evidence/table.ts';
import { ADJUSTMENTS, CURVES, METRICS, type Settings, settingsSchema, WEIGHTINGS } from '../../src/model/settings.ts';
import { makeRandom } from '../../src/numerics/random.ts';

export interface HostileCase {
  readonly text: string;
  readonly arms: readonly Arm[];
  readonly settings: Settings;
}

const OUTCOMES = [...Array.from({ length: 10 }, () => 'growth' as const), 'strength', 'fatigue'] as const;
/** Kinds of tables: what makes each hard. */
const KINDS = [
  'ordinary',
  'one row a study',
  'equal effects',
  'effects on a line',
  'rows that stand twice',
  'one cohort a study',
  'reserve differs between studies only',
  'a covariate differs in one study only',
  'one study of many rows',
  'precise and vague rows',
] as const;

/** One table and one set of settings; the same for the same seed. */
export function drawHostileCase(seed: number): HostileCase {
  const { uniform, normal } = makeRandom(seed);
  const below = (count: number) => Math.floor(count * uniform());
  const pick = <Value>(values: readonly Value[]) => values[below(values.length)];
  const kind = pick(KINDS);
  const studies = 2 + below(7);
  const tau = pick([0, 0.01, 0.05, 0.3]);
  const rows: Record<string, string>[] = [];
  for (let k = 0; k < studies; k++) {
    const shift = tau * normal();
    const outcome = pick(OUTCOMES);
    const count = kind === 'one row a study' ? 1 : kind === 'one study of many rows' && k === 0 ? 30 : 1 + below(5);
    const studyReserve = below(6);
    const special = kind === 'a covariate differs in one study only' ? k === 0 : uniform() < 0.5;
    const load = pick([30, 45, 60, 75, 85]);
    const [weeks, sets] = [6 + below(10), 2 + below(4)];
    for (let i = 0; i < count; i++) {
      const reserve = kind === 'reserve differs between studies only' ? studyReserve : i === 0 ? 0 : below(8);
      const n = pick([3, 8, 20, 60]);
      const sd = kind === 'precise and vague rows' ? pick([0.01, 6, 30]) : 6;
      const growth = 0.07 - 0.006 * reserve + shift + 0.01 * normal();
      const followup =
        kind === 'equal effects' ? 42 : kind === 'effects on a line' ? 44 - 0.25 * reserve : 40 * Math.exp(growth);
      rows.push({
        study: `Study ${k}`,
        year: String(2000 + 3 * k),
        design: 'parallel',
        training_status: special ? 'trained' : 'untrained',
        arm: `arm ${i}`,
        cohort: kind === 'one cohort a study' ? 'a' : uniform() < 0.3 ? 'b' : '',
        n: String(n),
        exercise: 'leg press',
        load_pct_1rm: uniform() < 0.9 ? String(pick([load, load, load + 5])) : '',
        sets: String(sets),
        sessions_per_week: '2',
        weeks: String(weeks),
        attempted_failure: reserve === 0 ? 'yes' : 'no',
        reserve_reps: String(reserve),
        reserve_sd: uniform() < 0.3 ? '1' : '',
        outcome,
        hours_after: outcome === 'fatigue' ? String(pick([0, 24, 48])) : '',
        measure: 'a measure',
        unit: 'mm',
        baseline_mean: '40',
        baseline_sd: String(sd),
        followup_mean: followup.toFixed(pick([1, 3])),
        followup_sd: String(sd),
        correlation: pick(['0.9', '']),
      });
      if (kind === 'rows that stand twice') rows.push({ ...rows[rows.length - 1], arm: `arm ${i} again` });
    }
  }
  const columns = Object.keys(ARM_COLUMNS);
  const text = Papa.unparse({ fields: columns, data: rows.map((row) => columns.map((name) => row[name] ?? '')) });
  const settings = settingsSchema.parse({
    metric: pick(METRICS),
    split: pick([null, null, null, 60, 50]),
    curve: pick(CURVES),
    weighting: pick(['mixed', 'mixed', ...WEIGHTINGS] as const),
    rho: pick([0, 0.5, 0.9]),
    adjust: ADJUSTMENTS.filter(() => uniform() < 0.12),
    keptShare: pick([0.5, 0.9, 0.95]),
    confidence: pick([0.8, 0.95, 0.99]),
    include: { yearFrom: uniform() < 0.2 ? 2006 : null },
  });
  return { text, arms: readArms(text, 'hostile.csv').arms, settings };
}
