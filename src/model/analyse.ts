/**
 * The analysis: rows and settings in, every number that is shown anywhere out, as plain JSON.
 *
 * Pure: the same at build time, in the browser's worker, on the command line and in tests.
 */
import type { Arm } from '../evidence/schema.ts';
import { fitBand } from './band.ts';
import { compareBands } from './difference.ts';
import type { Analysis } from './result.ts';
import { selectRows } from './selection.ts';
import type { Settings } from './settings.ts';

/**
 * @param arms validated rows of the table of study arms
 * @param settings complete settings; `settingsSchema.parse` fills in defaults
 * @returns a fit that fails is part of the result, with its reason; nothing is thrown for data
 */
export function analyse(arms: readonly Arm[], settings: Settings): Analysis {
  const { effects, excluded } = selectRows(arms, settings);
  const rows = { included: effects.length, excluded };
  if (settings.split === null) {
    return { settings, rows, bands: { all: fitBand(effects, settings).band }, difference: null };
  }
  const split = settings.split;
  const light = fitBand(
    effects.filter(({ arm }) => (arm.load_pct_1rm ?? Number.NaN) < split),
    settings,
  );
  const heavy = fitBand(
    effects.filter(({ arm }) => (arm.load_pct_1rm ?? Number.NaN) >= split),
    settings,
  );
  return {
    settings,
    rows,
    bands: { light: light.band, heavy: heavy.band },
    difference: compareBands(light, heavy, settings),
  };
}
