/** What one more study would do to an interval, over the evidence map, in words: caption, legend and cells. */
import type { ExpectedTarget } from '../model/plan/expectedTarget.ts';
import { LOAD_NAMES } from '../practice/loadNames.ts';
import { upperFirst } from './firstLetter.ts';
import { formatNumber, formatRange } from './format.ts';
import { GAIN_DIGITS, type GainTile, lookOf, SHADES_FROM, type TileLook } from './gainTiles.ts';

/** What the shading is of, or that there is none. @param people of the study */
export function stateShading(people: number, tiles: readonly GainTile[]): string {
  const study = `one more study of ${people} people, half of them training to failure and half leaving the reserve at which a cell begins`;
  return tiles.some((tile) => typeof lookOf(tile) === 'number')
    ? `Shaded by how much narrower the interval of the target would be expected to get with ${study}.`
    : `No cell is shaded: nowhere can the interval of the target be expected to get narrower by ${formatNumber(SHADES_FROM[0], GAIN_DIGITS)} repetitions or more with ${study}.`;
}

/** Where it would narrow most, by loads, or why nothing can be said. */
export function stateGains(people: number, tiles: readonly GainTile[]): string {
  const bands = [...new Set(tiles.map(({ band }) => band))];
  const said = bands.map((band) => stateBand(tiles.filter((tile) => tile.band === band)));
  return `With ${people} people: ${said.join('; ')}.`;
}

const UNFORESEEN = 'no interval can be foreseen';

/** Why there is nothing to shade, where that is so for all loads; null otherwise. */
export function stateUnsaid(tiles: readonly GainTile[]): string | null {
  if (tiles.some(({ after }) => after !== null)) return null;
  const reasons = [...new Set(tiles.map(({ reason }) => reason ?? UNFORESEEN))];
  const said =
    reasons.length === 1
      ? reasons
      : [...new Set(tiles.map(({ band, reason }) => `${LOAD_NAMES[band]}, ${reason ?? UNFORESEEN}`))];
  return `The map is not shaded: ${said.join('; ')}.`;
}

const EITHER = new Intl.ListFormat('en-GB', { type: 'disjunction' });

function stateBand(tiles: readonly GainTile[]): string {
  const [{ band, before, reason }] = tiles;
  const loads = LOAD_NAMES[band];
  if (tiles.every((tile) => tile.after === null)) return `${loads}, nothing can be said${reason ? `: ${reason}` : ''}`;
  const today = before.width === null ? tellMissing(before) : formatRange(before.low, before.high, GAIN_DIGITS);
  const measured = tiles.filter(({ narrowing }) => narrowing !== null);
  if (measured.length === 0) {
    const opens = new Set(tiles.flatMap((tile) => (lookOf(tile) === 'opens' ? [String(tile.reserve[0])] : [])));
    return opens.size === 0
      ? `${loads}, ${today} today, nor with it`
      : `${loads}, ${today} today, and an interval with an upper end where the other arm leaves ${EITHER.format(opens)} in reserve`;
  }
  const most = measured.reduce((a, b) => ((b.narrowing ?? 0) > (a.narrowing ?? 0) ? b : a));
  const look = lookOf(most);
  if (look === 'none' || look === 'wider')
    return `${loads}, today ${today}, nowhere narrower by ${formatNumber(SHADES_FROM[0], GAIN_DIGITS)} or more`;
  return `${loads}, today ${today}, most at ${most.reserve[0]} in reserve: about ${tellExpected(most.after)}, ${formatNumber(most.narrowing ?? 0, GAIN_DIGITS)} narrower`;
}

/** “0.21 to 0.93”, or why there is none. */
export function tellExpected(after: ExpectedTarget | null): string {
  if (!after) return 'none';
  return after.point === null ? tellMissing(after) : formatRange(after.low, after.high, GAIN_DIGITS);
}

/** “0.18”, “−0.02”, or what stands in its place. */
export function tellNarrowing(tile: Pick<GainTile, 'narrowing' | 'before' | 'after'>): string {
  if (tile.narrowing !== null) return formatNumber(tile.narrowing, GAIN_DIGITS);
  return lookOf(tile) === 'opens' ? 'would have an upper end' : 'cannot be told';
}

function tellMissing({ widthMissing }: ExpectedTarget): string {
  return widthMissing === 'no-upper-end' ? 'no upper end' : 'no target';
}

/** A sign of the legend with what it stands for. */
export interface LegendEntry {
  readonly look: TileLook;
  readonly words: string;
}

/** Every shade, so that the scale is seen whole; other signs where the map has them. Repetitions. */
export function listLegend(tiles: readonly GainTile[]): readonly LegendEntry[] {
  const looks = new Set(tiles.map(lookOf));
  const number = (value: number) => formatNumber(value, GAIN_DIGITS);
  const shades = SHADES_FROM.map((from, i): LegendEntry => {
    const to = SHADES_FROM[i + 1];
    const words = to === undefined ? `${number(from)} or more` : `${number(from)} to below ${number(to)}`;
    return { look: (i + 1) as TileLook, words };
  });
  const others: readonly LegendEntry[] = [
    { look: 'wider', words: `wider by ${number(SHADES_FROM[0])} or more` },
    { look: 'opens', words: 'an interval with an upper end, where there is none today' },
    { look: 'unsaid', words: 'no narrowing can be told' },
  ];
  return [
    { look: 'none', words: upperFirst(`less than ${number(SHADES_FROM[0])} either way`) },
    ...shades,
    ...others.filter(({ look }) => looks.has(look)),
  ];
}
