/** What stands behind the ends of the intervals on the cards, and behind their widths with people without end. */
import { lowerFirst } from '../../figures/firstLetter.ts';
import { findWidening, LIMIT_WORDS, WIDENING_WORDS } from '../../figures/plan/limitWords.ts';
import { ENDS_AS_COMPUTED } from '../../figures/plan/planWords.ts';
import type { PlanAnswer } from '../../model/plan/planAnswer.ts';
import type { Settings } from '../../model/settings.ts';

interface Props {
  readonly answers: readonly PlanAnswer[];
  readonly settings: Settings;
}

export function LimitNote({ answers, settings: { weighting } }: Props) {
  const widenings = answers.flatMap(({ expectation: { bands }, limits }) =>
    limits.flatMap(({ band: name, target }) => {
      const band = bands.find(({ band: one }) => one === name);
      return band && target ? [findWidening(target, band)] : [];
    }),
  );
  if (widenings.length === 0) return null;
  const isWider = widenings.some((one) => one !== null);
  return (
    <p class="small apart">
      {ENDS_AS_COMPUTED}
      {widenings.includes(null) && ` Without end of people: ${lowerFirst(LIMIT_WORDS)}`}
      {isWider && ` Where it is wider without end of people: ${lowerFirst(WIDENING_WORDS[weighting])}`}
    </p>
  );
}
