/**
 * The analysis: rows and settings in, every number that is shown anywhere out, as plain JSON.
 *
 * Pure: the same at build time, in the browser's worker, on the command line and in tests.
 */
import type { Effect } from '../evidence/effects.ts';
import type { Arm } from '../evidence/schema.ts';
import { describeBand } from './band.ts';
import { compareBands } from './difference.ts';
import { fitJoint } from './joint.ts';
import { splitByLoad } from './loads.ts';
import type { Analysis, Joint } from './result.ts';
import { selectRows } from './selection.ts';
import type { Settings } from './settings.ts';

/**
 * @param arms validated rows of the table of study arms
 * @param settings complete settings; `settingsSchema.parse` fills in defaults
 * @returns a fit that fails is part of the result, with its reason; nothing is thrown for data
 */
export function analyse(arms: readonly Arm[], settings: Settings): Analysis {
  const { effects, excluded } = selectRows(arms, settings);
  const common = { settings, rows: { included: effects.length, excluded }, joint: describeJoint(effects, settings) };
  if (settings.split === null) {
    return { ...common, bands: { all: describeBand(effects, settings).band }, difference: null };
  }
  const parts = splitByLoad(effects, settings.split);
  const light = describeBand(parts.light, settings);
  const heavy = describeBand(parts.heavy, settings);
  return {
    ...common,
    bands: { light: light.band, heavy: heavy.band },
    difference: compareBands(light.source, heavy.source, settings),
  };
}

function describeJoint(effects: readonly Effect[], settings: Settings): Joint {
  const { fit, failure } = fitJoint(effects, settings);
  if (fit) return fit.joint;
  return {
    meanLoad: null,
    studiedLoad: null,
    studiedReserve: null,
    coefficients: [],
    tau2: null,
    omega2: null,
    aicc: null,
    targets: [],
    failure,
  };
}
