/** What was, step by step, so that every step can be undone and done again. The states themselves are kept: back is exactly as it was. */

export interface Step<State> {
  readonly state: State;
  /** What was done to it, completing “Undo: …”. */
  readonly label: string;
}

export interface History<State> {
  /** Oldest first: each with what was done to it next. */
  readonly past: readonly Step<State>[];
  readonly present: State;
  /** Next to be done again last: each with what led to it. */
  readonly future: readonly Step<State>[];
  /** Steps that can no longer be undone, since only so many are kept. */
  readonly forgotten: number;
  /** What the last step was a part of; null where the next step stands alone. */
  readonly joins: string | null;
}

/** Steps that are kept: states share all that they have in common, so that so many are small. */
export const MOST_STEPS = 500;

export function startHistory<State>(present: State): History<State> {
  return { past: [], present, future: [], forgotten: 0, joins: null };
}

/**
 * The history after a step; what was undone before can no longer be done again. The same history where the state
 * is the same.
 *
 * @param joins what the step is a part of, the cell that is typed in for instance: steps in a row that are part of
 *   the same are undone at once; null for a step of its own
 */
export function record<State>(
  history: History<State>,
  state: State,
  label: string,
  joins: string | null = null,
): History<State> {
  if (state === history.present) return history;
  if (joins !== null && joins === history.joins && history.past.length > 0) {
    return { ...history, present: state, future: [] };
  }
  const past = [...history.past, { state: history.present, label }];
  const dropped = Math.max(0, past.length - MOST_STEPS);
  return { past: past.slice(dropped), present: state, future: [], forgotten: history.forgotten + dropped, joins };
}

/** The same history where there is nothing to undo. */
export function undo<State>(history: History<State>): History<State> {
  const last = history.past.at(-1);
  if (!last) return history;
  return {
    ...history,
    past: history.past.slice(0, -1),
    present: last.state,
    future: [...history.future, { state: history.present, label: last.label }],
    joins: null,
  };
}

/** The same history where nothing was undone. */
export function redo<State>(history: History<State>): History<State> {
  const next = history.future.at(-1);
  if (!next) return history;
  return {
    ...history,
    past: [...history.past, { state: history.present, label: next.label }],
    present: next.state,
    future: history.future.slice(0, -1),
    joins: null,
  };
}
