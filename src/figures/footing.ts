/** What the rows of a fit rest on, where that is more than what their papers print. */
import { findBand } from '../model/bands.ts';
import type { Analysis, Band, BandName } from '../model/result.ts';
import { countOf } from '../numerics/countOf.ts';
import { formatNumber, formatRange } from './format.ts';

/** Empty where all that the rows rest on is in their papers. */
export function stateFooting({ missingSds }: Pick<Analysis, 'missingSds'>, band: Band, name: BandName): string {
  const { assumed = 0, pooled = 0 } = band.restsOn;
  const parts = [
    assumed > 0 ? `${countOf(assumed, 'row')} on an assumption` : '',
    pooled > 0 ? `${countOf(pooled, 'row')} on the pooled spread of other rows` : '',
  ].filter(Boolean);
  if (parts.length === 0) return '';
  return `Of its rows, what the papers do not print stands behind some: ${parts.join(', ')}.${pooled > 0 ? stateWithout(missingSds, name) : ''}`;
}

function stateWithout(missingSds: Analysis['missingSds'], name: BandName): string {
  if (!missingSds) return '';
  const { shown } = findBand(missingSds.targetsWithout, name) ?? { shown: null };
  const target =
    shown === null
      ? 'there is no target'
      : `the target is ${formatNumber(shown.point, 1)} (${formatRange(shown.low, shown.high, 1)})`;
  return ` Without pooled spreads ${target}.`;
}
