/**
 * The analysis: rows and settings in, every number that is shown anywhere out, as plain JSON.
 *
 * Pure: the same at build time, in the browser's worker, on the command line and in tests.
 */
import type { Effect } from '../evidence/effects.ts';
import type { Arm } from '../evidence/schema.ts';
import { summariseBand } from './band.ts';
import { fitEffects, summariseTarget } from './bandFit.ts';
import { compareBands } from './difference.ts';
import { fitJoint } from './joint.ts';
import { splitByLoad } from './loads.ts';
import type { GrowthFits } from './response.ts';
import type { Analysis, FitFailure, Joint } from './result.ts';
import { selectRows } from './selection.ts';
import type { Settings } from './settings.ts';

/**
 * @param arms validated rows of the table of study arms
 * @param settings complete settings; `settingsSchema.parse` fills in defaults
 * @returns a fit that fails is part of the result, with its reason; nothing is thrown for data
 */
export function analyse(arms: readonly Arm[], settings: Settings): Analysis {
  return analyseWithFits(arms, settings).analysis;
}

/** The analysis with the fits behind it. */
export function analyseWithFits(
  arms: readonly Arm[],
  settings: Settings,
): { readonly analysis: Analysis; readonly fits: GrowthFits } {
  const { effects, excluded } = selectRows(arms, settings);
  const joint = fitJoint(effects, settings);
  const common = {
    settings,
    rows: { included: effects.length, excluded },
    joint: joint.fit ? joint.fit.joint : noJoint(joint.failure),
    missingSds: measurePooling(arms, settings, effects),
  };
  const fitsOf = (bands: GrowthFits['bands']): GrowthFits => ({ bands, joint: joint.fit, effects });
  if (settings.split === null) {
    const all = summariseBand(effects, settings);
    return {
      analysis: { ...common, bands: { all: all.band }, difference: null },
      fits: fitsOf([['all', all.source]]),
    };
  }
  const parts = splitByLoad(effects, settings.split);
  const light = summariseBand(parts.light, settings);
  const heavy = summariseBand(parts.heavy, settings);
  return {
    analysis: {
      ...common,
      bands: { light: light.band, heavy: heavy.band },
      difference: compareBands(light.source, heavy.source, settings),
    },
    fits: fitsOf([
      ['light', light.source],
      ['heavy', heavy.source],
    ]),
  };
}

function measurePooling(arms: readonly Arm[], settings: Settings, effects: readonly Effect[]): Analysis['missingSds'] {
  if (settings.missingSds === 'off') return null;
  const own = selectRows(arms, { ...settings, missingSds: 'off' }).effects;
  const targetOf = (rows: readonly Effect[]) => summariseTarget(fitEffects(rows, settings), settings);
  const rows = effects.filter(({ restsOn }) => restsOn === 'pooled').length;
  if (settings.split === null) return { rows, targetsWithout: { all: targetOf(own) } };
  const { light, heavy } = splitByLoad(own, settings.split);
  return { rows, targetsWithout: { light: targetOf(light), heavy: targetOf(heavy) } };
}

function noJoint(failure: FitFailure): Joint {
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
