/** A problem of a table: where it is, what was seen, what was expected and what to do about it. */

export type ProblemKind =
  | 'file'
  | 'header'
  | 'missing-column'
  | 'unknown-column'
  | 'ragged-line'
  | 'missing-value'
  | 'wrong-value'
  | 'contradiction'
  | 'duplicate'
  | 'unusual';

export interface Problem {
  readonly kind: ProblemKind;
  readonly file: string;
  /** Physical line, the header being 1; null where the file as a whole is meant. */
  readonly line: number | null;
  /** Column name; null where the line as a whole is meant. */
  readonly column: string | null;
  /** What was seen, as it stands in the file; empty where nothing stood. */
  readonly value: string;
  /** Completes "expected …". */
  readonly expected: string;
  /** What to do; a sentence, or null where the expectation says it. */
  readonly remedy: string | null;
}

/** Problems in the order of their lines, those of the whole file first; of one line in the order given. */
export function sortByLine(problems: readonly Problem[]): readonly Problem[] {
  return [...problems].sort((a, b) => (a.line ?? 0) - (b.line ?? 0));
}

/** Characters of a value that a message shows; the rest is counted. */
const SHOWN_CHARACTERS = 60;

/**
 * One line of text: “line 17, `reserve_reps`: expected a number from 0 to 30, received “1-2”. …”
 *
 * Value and column name are cut and control characters are shown as their code points; it is still text, to be
 * shown as text.
 */
export function formatProblem(problem: Problem): string {
  const { line, column } = problem;
  const place = [line === null ? 'file' : `line ${line}`, column === null ? null : `\`${showValue(column)}\``].filter(
    Boolean,
  );
  return `${place.join(', ')}: ${formatExpectation(problem)}`;
}

/**
 * The same without its place, to stand at the place: “expected a number from 0 to 30, received “1-2”. …”
 *
 * @param others values that were received at other places
 * @param andMore true where there are still others
 */
export function formatExpectation(
  { value, expected, remedy }: Pick<Problem, 'value' | 'expected' | 'remedy'>,
  others: readonly string[] = [],
  andMore = false,
): string {
  const received = [value, ...others].map(showReceived);
  return `expected ${expected}, received ${received.join(', ')}${andMore ? ', …' : ''}.${remedy ? ` ${remedy}` : ''}`;
}

/** A value in quotation marks, or that there is none. */
export function showReceived(value: string): string {
  return value === '' ? 'nothing' : `“${showValue(value)}”`;
}

/** A value shortened for a message, unseen characters written out. */
export function showValue(value: string): string {
  const cut = value.length > SHOWN_CHARACTERS ? `${value.slice(0, SHOWN_CHARACTERS)}…` : value;
  const visible = cut.replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu, writeCodePoint);
  return value.length > SHOWN_CHARACTERS ? `${visible} (${value.length} characters)` : visible;
}

/** A character as its code point, `\u202e`. */
export function writeCodePoint(character: string): string {
  return `\\u${(character.codePointAt(0) ?? 0).toString(16).padStart(4, '0')}`;
}
