/** What stands behind the answer of each band: rows and studies in its fit, and how many of these show what reserve does. */
import { groupRows } from '../evidence/groupRows.ts';
import type { Arm } from '../evidence/schema.ts';
import { listBands } from './bands.ts';
import { bandOfLoad } from './loads.ts';
import type { Analysis, BandName } from './result.ts';

export interface BandBase {
  readonly band: BandName;
  /** Rows that the settings keep and an effect can be had of, whether or not they carry a fit. */
  readonly rows: number;
  readonly studies: number;
  /** Studies among them with two or more known reserves: the only ones that compare reserves in one and the same study. */
  readonly comparing: number;
  readonly hasTarget: boolean;
}

/**
 * @param arms all rows of the table
 * @param analysis of these rows
 */
export function countBase(
  arms: readonly Arm[],
  { settings, rows, bands }: Pick<Analysis, 'settings' | 'rows' | 'bands'>,
): readonly BandBase[] {
  const excluded = new Set(rows.excluded.map(({ line }) => line));
  const kept = arms.filter(({ line }) => !excluded.has(line));
  return listBands(bands).map(([band, { target }]) => {
    const inBand = kept.filter(({ load_pct_1rm: load }) => bandOfLoad(load ?? Number.NaN, settings.split) === band);
    const studies = [...groupRows(inBand, ({ study }) => study).values()];
    const reservesOf = (study: readonly Arm[]) => new Set(study.map(({ reserve_reps }) => reserve_reps)).size;
    return {
      band,
      rows: inBand.length,
      studies: studies.length,
      comparing: studies.filter((study) => reservesOf(study) > 1).length,
      hasTarget: target.point !== null,
    };
  });
}
