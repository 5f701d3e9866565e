/** What a move did to the controls, in their own words: “Curve: from flexible curve to straight line”. */

import { upperFirst } from '../../figures/firstLetter.ts';
import { hasMoved, stateMoved } from '../../figures/moved.ts';
import { listBands } from '../../model/bands.ts';
import { FILTER_KEYS, FILTERS } from '../../model/filters.ts';
import type { Analysis } from '../../model/result.ts';
import type { Settings } from '../../model/settings.ts';
import { type Control, optionsWith, SETTING_CONTROLS } from './controlList.ts';

interface Reading {
  readonly label: string;
  readonly read: (settings: Settings) => string;
}

/** Everything that a move can change and a reader can see, in the order of the page. */
const READINGS: readonly Reading[] = [
  ...SETTING_CONTROLS.map((control) => ({
    label: control.label,
    read: (settings: Settings) => show(control, settings),
  })),
  ...FILTER_KEYS.map((key) => ({
    label: upperFirst(FILTERS[key].name),
    read: ({ include }: Settings) => include[key].join(', ') || 'all',
  })),
  { label: 'Published from', read: ({ include }) => String(include.yearFrom ?? 'the first') },
  { label: 'Published to', read: ({ include }) => String(include.yearTo ?? 'the last') },
  { label: 'Studies left out', read: ({ include }) => include.withoutStudies.join(', ') || 'none' },
];

/** Changes a move names; of more it says how many there were. */
const MOST_NAMED = 3;

function show(control: Control, settings: Settings): string {
  if (control.kind === 'number') {
    if (control.id === 'split' && settings.split === null) return 'none';
    return `${control.read(settings)}${control.unit && `\u00a0${control.unit}`}`;
  }
  const value = control.read(settings);
  return optionsWith(control.options, value).find((option) => option.value === value)?.label ?? value;
}

/** What differs between two settings, from the one to the other. */
export function stateChanges(from: Settings, to: Settings): string {
  const changes = READINGS.flatMap(({ label, read }) => {
    const [was, is] = [read(from), read(to)];
    // Which loads are apart says it all; the split then comes and goes with it.
    if (was === is || (label === 'Split' && (from.split === null || to.split === null))) return [];
    return `${label}: from ${was} to ${is}`;
  });
  if (changes.length === 0) return 'A part that no control shows';
  const more = changes.length - MOST_NAMED;
  return `${changes.slice(0, MOST_NAMED).join('; ')}${more > 0 ? `; and ${more} more` : ''}`;
}

/** A move in one line: what moved, and what that came to; where nothing did, why where it is known. */
export function stateMove(before: Analysis, after: Analysis): string {
  const changes = `${stateChanges(before.settings, after.settings)}.`;
  if (hasMoved(before, after)) return `${changes} ${stateMoved(before, after)}`;
  const why = explainStill(before, after);
  return `${changes} Nothing moved${why && `: ${why}`}.`;
}

/** Settings of other parts of an analysis, which only an address can change here. */
const BESIDE: readonly (keyof Settings)[] = ['fatigueMargin', 'seed', 'smallestWorthwhile'];

/** Why two settings come to the same curve; empty where that is not known. */
function explainStill(before: Analysis, after: Analysis): string {
  const [from, to] = [before.settings, after.settings];
  const differs = (key: keyof Settings) => JSON.stringify(from[key]) !== JSON.stringify(to[key]);
  const changed = (Object.keys(to) as (keyof Settings)[]).filter(differs);
  const [only] = changed;
  if (changed.length !== 1) return '';
  const hasFit = listBands(after.bands).some(([, { failure }]) => failure === null);
  if (!hasFit) return 'there is no fit, before or after';
  if (only === 'include') return 'the rows that are fitted are the same ones';
  if (only === 'split') return 'no row has a load between the two';
  if (only === 'curve') return 'too few reserves were studied for either, and a simpler curve stands for both';
  if (only === 'missingSds') return 'every row that is fitted has a spread of its own';
  if (only === 'assumedCorrelation' || only === 'rho') {
    if (to.weighting === 'equal') return 'with all rows equal it counts for nothing how exact a row is';
    return only === 'rho' ? 'no people were measured for two of these rows' : 'no row that is fitted needs it';
  }
  return BESIDE.includes(only) ? 'growth against reserve does not depend on it' : '';
}
