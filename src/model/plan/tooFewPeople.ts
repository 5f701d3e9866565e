/** Why no number of people that was tried gives an interval as narrow as asked, in words. */

/** Most digits that a width is told with, where fewer would make it the one that is asked for. */
const MOST_DIGITS = 6;
const WHY =
  'since people take away neither how studies and their rows differ otherwise nor what is unsure where the study has no arm';

export interface TriedWidth {
  /** In each arm. */
  readonly people: number;
  /** Expected, repetitions; null without an upper end or a target. */
  readonly width: number | null;
}

/**
 * @param tried from few people to people without end, all wider than asked
 * @param asked repetitions
 * @param isFalling whether each width is at most the one before, so that what holds of those tried holds of all
 * @param endless why of more people no fit would be made; null where one would be
 */
export function explainTooFew(
  tried: readonly TriedWidth[],
  asked: number,
  isFalling: boolean,
  endless: string | null,
): string {
  const [least, most] = [tried[0].people, tried[tried.length - 1]];
  const told = (width: number | null) => (width === null ? null : writeAbove(width, asked));
  const limit = told(most.width);
  if (isFalling && endless === null) {
    const reaches = limit === null ? 'gives no interval with an upper end' : `leaves it about ${limit} wide`;
    return `no number of people is enough for ${asked} in one such study: even without end it ${reaches}, ${WHY}`;
  }
  const without = limit === null ? 'no upper end with people without end' : `about ${limit} with people without end`;
  const { people, width } = tried.reduce((best, one) =>
    (one.width ?? Number.POSITIVE_INFINITY) < (best.width ?? Number.POSITIVE_INFINITY) ? one : best,
  );
  return [
    `none of the numbers tried (${least} to ${most.people.toLocaleString('en')} in each arm) is enough for ${asked} in one such study`,
    width === null
      ? ': none gives an interval with an upper end'
      : `: the narrowest, about ${told(width)} wide, is expected with ${people.toLocaleString('en')} in each arm`,
    endless === null ? `, and ${without}` : `; with ever more people none can be foreseen (${endless})`,
  ].join('');
}

/** With as many digits as keep it above what is asked. */
function writeAbove(width: number, asked: number): string {
  for (let digits = 2; digits < MOST_DIGITS; digits++) {
    const text = width.toFixed(digits);
    if (Number(text) > asked) return text;
  }
  return width.toFixed(MOST_DIGITS);
}
