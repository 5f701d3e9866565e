/**
 * What goes with the worked example once its lines have gone from version one: its event and its version
 * two. A programme of one's own is never judged by the example's Saturday.
 */
import type { Draft } from './draft.ts';
import type { EditorLine, LineList } from './edit.ts';

export interface LeftExample {
  readonly draft: Draft;
  /** True where the example's event went. */
  readonly event: boolean;
  /** True where the example's version two went. */
  readonly second: boolean;
}

/**
 * @param before the draft before a step, `after` the one that the step came to
 * @param example the worked example as the page shows it first
 */
export function leaveExample(before: Draft, after: Draft, example: Draft): LeftExample {
  const hasLeft = holdsAny(before.first, example.first) && !holdsAny(after.first, example.first);
  const event = hasLeft && after.calendar.event !== null && isSame(after.calendar.event, example.calendar.event);
  const second =
    hasLeft && after.second !== null && after.second === before.second && isOf(after.second, example.second);
  return {
    draft: {
      ...after,
      second: second ? null : after.second,
      calendar: event ? { ...after.calendar, event: null } : after.calendar,
    },
    event,
    second,
  };
}

function holdsAny({ lines }: LineList, example: LineList): boolean {
  const known = new Set(example.lines.map(writeCells));
  return lines.some((line) => known.has(writeCells(line)));
}

function isOf({ lines }: LineList, example: LineList | null): boolean {
  const known = new Set(example?.lines.map(writeCells));
  return lines.every((line) => known.has(writeCells(line)));
}

function writeCells({ cells }: EditorLine): string {
  return JSON.stringify(cells);
}

function isSame(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
