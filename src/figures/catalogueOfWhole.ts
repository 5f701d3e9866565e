/**
 * Entries of the catalogue that are drawn once an analysis, from what stands beside the curves. Each
 * `show…` gives the figure, or why there is none.
 */
import { findBand, listBands } from '../model/bands.ts';
import { listSweepLevels } from '../model/checks/sweepLevels.ts';
import type { FatigueByStatus } from '../model/fatigue.ts';
import { countOf, countStudies } from '../numerics/countOf.ts';
import { listTargets } from '../practice/targetTable.ts';
import { beyondFailureContrasts } from './beyondFailureContrasts.ts';
import type { FigureEvidence, MadeFigure } from './catalogueEntry.ts';
import { evidenceMap } from './evidenceMap.ts';
import { recoveryByHours } from './recoveryByHours.ts';
import { strengthContrasts } from './strengthContrasts.ts';
import { targetsByChoice } from './targetsByChoice.ts';
import { targetsByRange } from './targetsByRange.ts';

export function showTargets({ analysis }: FigureEvidence): MadeFigure | string {
  const { settings, rows, bands, joint } = analysis;
  const targets = listTargets(analysis);
  if (targets.every(({ target: { point, low } }) => point === null || low === null))
    return targets[0]?.target.reason ?? 'there is no target';
  const all = listBands(bands).map(([, band]) => band);
  const furthest = Math.max(...[...all, joint].flatMap(({ studiedReserve }) => studiedReserve?.high ?? []));
  return {
    figure: targetsByRange(targets, { ...settings, furthest }),
    shown: `The targets of ${settings.outcome} from ${countOf(rows.included, 'row')}${settings.split === null ? '' : '; near the split between light and heavy the fit of all loads together answers'}.`,
    excluded: rows.excluded,
    part: { settings, targets, furthest },
  };
}

export function showStrength({ analysis: { strength, settings } }: FigureEvidence): MadeFigure | string {
  if (strength.failure) return strength.failure.reason;
  const { excluded, ...part } = strength;
  return {
    figure: strengthContrasts(strength, settings),
    shown: `The ${countOf(strength.rows, 'row')} of ${countStudies(strength.studies)} that measured strength and state their load.`,
    excluded,
    part: { settings, strength: part },
  };
}

export function showRecovery({ analysis }: FigureEvidence, status: FatigueByStatus['status']): MadeFigure | string {
  const { fatigue, settings } = analysis;
  const found = fatigue.byStatus.find((one) => one.status === status);
  if (!found) return `no row of ${status} people measured fatigue`;
  if (found.failure) return found.failure.reason;
  if (found.recovery.length === 0) return 'no reserve near failure was studied';
  const { inference: _inference, ...part } = found;
  return {
    figure: recoveryByHours(analysis, { status }),
    shown: `The ${countOf(found.rows, 'row')} of ${countStudies(found.studies)} that measured fatigue in ${status} people.`,
    excluded: fatigue.excluded,
    part: { settings, fatigue: part },
  };
}

export function showBeyondFailure({ analysis: { beyondFailure, settings } }: FigureEvidence): MadeFigure | string {
  if (beyondFailure.every(({ difference }) => difference === null))
    return beyondFailure[0]?.failure?.reason ?? 'no study compared work beyond failure with failure';
  return {
    figure: beyondFailureContrasts(beyondFailure, settings),
    shown:
      'Rows at reserve 0 of studies that had arms at failure and arms beyond it; all other rows are no part of it.',
    excluded: null,
    part: { settings, beyondFailure },
  };
}

export function showMap({ map }: FigureEvidence): MadeFigure | string {
  if (map.places.length === 0) return `no arm that measured ${map.outcome} states load and reserve`;
  return {
    figure: evidenceMap(map),
    shown: `Arms that measured ${map.outcome} and state load and reserve, also those that are not in the fit.`,
    excluded: null,
    part: { map },
  };
}

export function showRobustness({ analysis, sweep }: FigureEvidence, name: 'light' | 'heavy'): MadeFigure | string {
  if (!sweep) return 'the other choices were not worked out';
  const { outcomes, ...summary } = sweep[name];
  if (summary.quantiles.length === 0) return `none of ${countOf(outcomes.length, 'combination')} gives a target`;
  const levels = listSweepLevels(sweep[name]);
  const target = findBand(analysis.bands, name)?.target ?? null;
  return {
    figure: targetsByChoice(name, sweep, levels, target?.point ?? null),
    shown: `The targets of ${countOf(outcomes.length, 'combination')} of choices; each leaves out rows of its own.`,
    excluded: null,
    part: { settings: analysis.settings, target, combinations: outcomes.length, ...summary, levels },
  };
}
