/** What people without end would leave of an interval, in words: of one rule for the page, its texts and the terminal. */
import type { ExpectedTarget } from '../../model/plan/expectedTarget.ts';
import type { Settings } from '../../model/settings.ts';
import { formatWidth, stateWidth } from './planWords.ts';

/** What the limit means where it is the narrowest: true also of tables in which τ² or ω² is fitted as 0. */
export const LIMIT_WORDS =
  'One study narrows it only so far, however large: people take away neither how studies and their rows differ otherwise (τ² and ω², as fitted), nor what is unsure where the study has no arm.';

const WEIGHS_MORE =
  'The interval is made of how far the studies lie from the curve. A larger study weighs more, which also shifts what the others weigh, while how far it lies from the others (τ² and ω²) does not shrink with its people.';

/** Why more people may widen an interval, by what a row weighs. */
export const WIDENING_WORDS = {
  mixed: WEIGHS_MORE,
  precision: WEIGHS_MORE,
  equal:
    'Every row weighs the same here, however many its people, so that more of them do little; and a median of outcomes is itself known to some per cent only.',
} as const satisfies Readonly<Record<Settings['weighting'], string>>;

/** What the limit is held against. */
export interface BesideLimit {
  /** Today. */
  readonly before: ExpectedTarget;
  /** With the people that are planned; null where nothing is expected. */
  readonly after: ExpectedTarget | null;
}

/** Than what an interval would be wider with people without end, as widths are told; null where it would not be. */
export function findWidening(limit: ExpectedTarget, { before, after }: BesideLimit): 'expected' | 'today' | null {
  if (after && toldWidth(limit) > toldWidth(after)) return 'expected';
  return toldWidth(limit) > toldWidth(before) ? 'today' : null;
}

/** “0.94 wide, wider than with these people”. */
export function stateLimitWidth(limit: ExpectedTarget, beside: BesideLimit): string {
  const than = { expected: ', wider than with these people', today: ', wider than today' };
  const widening = findWidening(limit, beside);
  return `${stateWidth(limit)}${widening ? than[widening] : ''}`;
}

/** The limit in a sentence, and why it is no other in the next. */
export function stateLimit(
  limit: ExpectedTarget,
  beside: BesideLimit,
  { weighting }: Pick<Settings, 'weighting'>,
): string {
  const widening = findWidening(limit, beside);
  if (widening === 'expected') {
    const isAgain = beside.after !== null && toldWidth(beside.after) < toldWidth(beside.before);
    return `More people may widen it${isAgain ? ' again' : ''} (with people without end: ${stateWidth(limit)}). ${WIDENING_WORDS[weighting]}`;
  }
  const why = widening === null ? LIMIT_WORDS : WIDENING_WORDS[weighting];
  return `With people without end: ${stateLimitWidth(limit, beside)}. ${why}`;
}

/** As wide as it is told, so that words agree with numbers; an interval without an upper end is wider than any. */
function toldWidth({ width, widthMissing }: ExpectedTarget): number {
  if (width !== null) return Number(formatWidth(width));
  return widthMissing === 'no-target' ? Number.NaN : Number.POSITIVE_INFINITY;
}
