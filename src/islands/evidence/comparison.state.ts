/** State of what the present fit is held against on the Evidence page: what the last move left, and what is pinned. */
import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import { hasMoved } from '../../figures/moved.ts';
import type { Analysis } from '../../model/result.ts';
import type { Settings } from '../../model/settings.ts';
import type { FittingState } from './fitting.state.ts';
import { isSame, type Moves } from './moves.ts';
import { stateChanges, stateMove } from './moveWords.ts';
import type { Fits } from './openFits.ts';
import { createOtherFits, type OtherFit } from './otherFits.state.ts';

interface Compared {
  readonly table: string;
  readonly settings: ReadonlySignal<Settings>;
  readonly fitting: FittingState;
  readonly moves: ReadonlySignal<Moves>;
  readonly calculation: Fits;
}

export function createComparison({ table, settings, fitting, moves, calculation }: Compared) {
  const pinned = signal<Settings | null>(null);
  const showsNewStudy = signal(false);
  const others = createOtherFits(table, calculation);
  const [left, pin] = [others.none(), others.none()];
  /** Read to who does not see the figures, once the controls rest: not every place of a slider. */
  const announced = signal('');

  /** What the last move came to, in a line; empty before the first, and while the figures are not up to date. */
  const line = computed(() => {
    const [before, other] = [left.value, pinned.value];
    // What is pinned says the same below.
    return before && other && isSame(before.settings, other) && !isSame(before.settings, settings.value)
      ? `${stateChanges(before.settings, settings.value)}.`
      : stateAgainst(before, 'former', fitting);
  });
  /** The analysis that the last move left, where it differs from what is shown. */
  const former = computed(() => {
    const before = left.value?.analysis;
    return before && hasMoved(before, fitting.analysis.value) ? before : undefined;
  });
  /** The present fit against what is pinned, in a line; empty where nothing is pinned. */
  const pinLine = computed(() =>
    pin.value && isSame(pin.value.settings, settings.value)
      ? 'What is pinned is what stands now: move a control, and both stay in sight.'
      : stateAgainst(pin.value, 'pinned', fitting),
  );
  const connect = () => {
    const stops = [
      effect(() => {
        // Until a reader's own table is read, what is at hand is the site's.
        if (!fitting.awaitsOwn.value) others.remember(fitting.analysis.value);
      }),
      others.follow(
        computed(() => moves.value.left),
        left,
      ),
      others.follow(pinned, pin),
      effect(() => {
        const said = [line.value, pinned.value && pinLine.value].filter(Boolean).join(' Against what is pinned. ');
        if (!moves.value.isGoing && !fitting.pending.value) announced.value = said;
      }),
    ];
    return () => {
      for (const stop of stops) stop();
    };
  };
  return { pinned, showsNewStudy, pin, line, former, pinLine, announced, connect };
}

/** Another fit against the present one, in words. */
function stateAgainst(
  other: OtherFit | null,
  called: 'former' | 'pinned',
  { analysis, isShown }: FittingState,
): string {
  if (!other || !isShown.value) return '';
  const now: Analysis = analysis.value;
  // Just undone or dragged, the picture may be of the other settings still.
  if (isSame(other.settings, now.settings)) return '';
  if (other.analysis) return stateMove(other.analysis, now);
  const changes = stateChanges(other.settings, now.settings);
  return `${changes}. ${other.problem === null ? `The ${called} settings are being fitted …` : `The ${called} settings could not be fitted: ${other.problem}.`}`;
}
