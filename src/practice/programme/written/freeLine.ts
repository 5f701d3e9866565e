/** A line outside a table: a heading, a remark, or sets of one exercise or several. */
import type { NamedExercise } from '../../../evidence/exerciseNames.ts';
import type { ToAssemble } from './assemble.ts';
import { type Context, readContext } from './context.ts';
import { takeMarks } from './marks.ts';
import { isListed } from './name.ts';
import { readPiece } from './piece.ts';
import { scan } from './scan.ts';
import { splitExercises } from './severalExercises.ts';
import { type NotRead, notRead } from './understood.ts';

export interface FreeLine {
  /** Day or week that it begins with; null where it names none. */
  readonly context: Context | null;
  readonly lines: readonly ToAssemble[];
  /** What is no set and no day. */
  readonly note: string | null;
  readonly notRead: readonly NotRead[];
}

/** Characters of a line that are read; nobody writes a longer one of sets. */
const LONGEST = 500;

export function readFreeLine(text: string, line: number, exercises: readonly NamedExercise[]): FreeLine {
  if (text.length > LONGEST) {
    const expected = `a line of up to ${LONGEST} characters`;
    const told = notRead(line, null, { value: text, expected, remedy: 'Write each exercise on a line of its own.' });
    return { context: null, lines: [], note: null, notRead: [told] };
  }
  const marked = takeMarks(text);
  const context = readContext(marked.text);
  const { text: rest, superset } = context ? takeMarks(context.rest) : marked;
  const mark = superset ?? marked.superset;
  const parts = splitExercises(rest).map((part) => ({ part, kind: kindOf(part, exercises) }));
  const isOfSets = parts.some(({ kind }) => kind === 'sets');
  if (!isOfSets && parts.some(({ kind }) => kind === 'instruction') && !context) {
    return { context, lines: [], note: null, notRead: [refuseInstruction(line, text.trim())] };
  }
  return {
    context,
    lines: isOfSets
      ? parts.map(({ part }) => ({
          line,
          text: part,
          pieces: [{ place: { line, column: null, text: part }, column: null }],
          notes: mark === null ? [] : [mark],
        }))
      : [],
    note: isOfSets || (context && rest === '') ? null : text.trim(),
    notRead: [],
  };
}

/** sets: of an exercise; instruction: what holds for others; words: neither. */
function kindOf(text: string, exercises: readonly NamedExercise[]): 'sets' | 'instruction' | 'words' {
  const tokens = scan(text);
  const said = tokens.flatMap((token) => (token.kind === 'notation' && !token.said.isNote ? [token.said] : []));
  const [name] = readPiece({ place: { line: 0, column: null, text }, column: null }).words;
  if (name !== undefined && isListed(name, exercises)) return 'sets';
  const saysHowMany = said.some(
    ({ found = [], refused }) =>
      refused || found.some(({ field }) => field === 'sets' || field === 'repetitions' || field === 'load'),
  );
  const numbers = tokens.filter(({ kind }) => kind === 'number' || kind === 'unknown').length;
  // A lone number may be a year or the number of a block.
  if (saysHowMany || numbers >= 2) return 'sets';
  return said.length > 0 ? 'instruction' : 'words';
}

function refuseInstruction(line: number, value: string): NotRead {
  return notRead(line, null, {
    value,
    expected: 'the sets of an exercise',
    remedy: 'What holds for several lines is to be written on each of them.',
  });
}
