/** A line outside a table: a heading, a remark, or sets of one exercise or several. */
import type { NamedExercise } from '../../../evidence/exerciseNames.ts';
import { isNamed } from '../../../evidence/findNamed.ts';
import type { ToAssemble } from './assemble.ts';
import { type Context, readContext } from './context.ts';
import { takeMisspeltDay } from './days.ts';
import { type DayRefusal, refuseDayWithin, takeDayBeside } from './daysWithin.ts';
import { takeMarks } from './marks.ts';
import { type Piece, readPiece } from './piece.ts';
import { isJoint, scan, type Token } from './scan.ts';
import { splitExercises } from './severalExercises.ts';
import { type NotRead, notRead } from './understood.ts';

export interface FreeLine {
  /** Day or week that it begins with; null where it names none. */
  readonly context: Context | null;
  /** A word that it begins with and that is nearly a weekday; null where it begins with none. */
  readonly misspeltDay: string | null;
  readonly lines: readonly FreeSets[];
  /** The name where the line is that of an exercise and nothing else: its sets may stand below. */
  readonly name: Piece | null;
  /** True where the line is of sets and names no exercise: it may stand above. */
  readonly lacksName: boolean;
  /** What is no set and no day. */
  readonly note: string | null;
  readonly notRead: readonly NotRead[];
}

/** The sets of one exercise, and the day that their part of the line names. */
export interface FreeSets extends ToAssemble {
  /** Before them: it holds for what follows as well. */
  readonly begins: Context | null;
  /** Among or behind them: it is theirs only. */
  readonly within: Context | null;
}

/** A date beside a day. */
const DATE = /^\d{1,4}[./-]\d{1,2}[./-](?:\d{1,4})?$/u;
/** A week that is another one again: “Week 2: as week 1”, “repeat for 4 weeks”. */
const REPEATS = /(?<!\p{L})(?:same|as|like|repeat(?:ed|s)?|copy|ditto|again)(?!\p{L})/iu;
const OF_WEEKS = /(?<!\p{L})(?:weeks?|wks?)(?!\p{L})/iu;
const NOTHING: FreeLine = {
  context: null,
  misspeltDay: null,
  lines: [],
  name: null,
  lacksName: false,
  note: null,
  notRead: [],
};
/** Characters of a line that are read; nobody writes a longer one of sets. */
const LONGEST = 500;

export function readFreeLine(text: string, line: number, exercises: readonly NamedExercise[]): FreeLine {
  if (text.length > LONGEST) {
    const expected = `a line of up to ${LONGEST} characters`;
    const told = notRead(line, null, { value: text, expected, remedy: 'Write each exercise on a line of its own.' });
    return { ...NOTHING, notRead: [told] };
  }
  const marked = takeMarks(text);
  const context = readContext(marked.text);
  const misspelt = context || isNamed(exercises, marked.text) ? null : takeMisspeltDay(marked.text);
  const { text: rest, superset } = context ? takeMarks(context.rest) : misspelt ? takeMarks(misspelt.rest) : marked;
  const mark = superset ?? marked.superset;
  const { parts: dated, notRead: badDay } = dateParts(splitExercises(rest, exercises), context, line);
  const parts = dated.map((one) => ({ ...one, kind: kindOfLine(one.part, exercises) }));
  const isOfSets = parts.some(({ kind }) => kind === 'sets');
  if (!isOfSets && parts.some(({ kind }) => kind === 'instruction') && !context) {
    return { ...NOTHING, notRead: [refuseInstruction(line, text.trim())] };
  }
  if (!isOfSets && REPEATS.test(text) && (OF_WEEKS.test(text) || context?.week)) {
    return { ...NOTHING, notRead: [refuseRepeat(line, text.trim())] };
  }
  const [only] = parts;
  const pieces = parts.map(({ part }): Piece => ({ place: { line, column: null, text: part }, column: null }));
  return {
    context,
    misspeltDay: misspelt?.day ?? null,
    name:
      isOfSets && parts.length === 1 && isNamed(exercises, only.part)
        ? { ...pieces[0], column: { kind: 'exercise' } }
        : null,
    lacksName: isOfSets && parts.length === 1 && readPiece(pieces[0]).words.length === 0,
    lines: isOfSets
      ? pieces.map((piece, i) => ({
          line,
          text: parts[i].written,
          pieces: [piece],
          notes: mark === null ? parts[i].notes : [mark, ...parts[i].notes],
          begins: parts[i].begins,
          within: parts[i].within,
        }))
      : [],
    note: isOfSets || (context && rest === '') ? null : text.trim(),
    notRead: isOfSets ? badDay : [],
  };
}

interface DatedPart {
  /** As it stood. */
  readonly written: string;
  /** Without its day. */
  readonly part: string;
  readonly begins: Context | null;
  readonly within: Context | null;
  /** A day that was not taken. */
  readonly notes: readonly string[];
}

/** @param context that the line begins with */
function dateParts(
  written: readonly string[],
  context: Context | null,
  line: number,
): { readonly parts: readonly DatedPart[]; readonly notRead: readonly NotRead[] } {
  let under = context?.days ?? [];
  const refused: DayRefusal[] = [];
  const parts = written.map((text, i) => {
    const begins = i === 0 ? null : readContext(text);
    if (begins) under = begins.days;
    const beside = takeDayBeside(begins ? begins.rest : text, under);
    if (beside.refused) refused.push(beside.refused);
    return { written: text, begins, isUnder: under.length > 0, part: beside.rest, within: beside.within };
  });
  // A day behind the last of several exercises may be that of all.
  const within = parts.flatMap(({ within: days }) => (days ? [{ text: days.text, isClear: true }] : []));
  if (within.length > 0 && parts.some((one) => one.within === null && !one.isUnder)) refused.push(...within);
  return {
    parts: parts.map((one) => ({
      ...one,
      within: refused.length > 0 ? null : one.within,
      notes: one.within && refused.length > 0 ? [one.within.text] : [],
    })),
    notRead: refused.length === 0 ? [] : [refuseDayWithin(line, refused)],
  };
}

/** sets: of an exercise; instruction: what holds for others; words: neither. */
export function kindOfLine(text: string, exercises: readonly NamedExercise[]): 'sets' | 'instruction' | 'words' {
  if (DATE.test(text.trim())) return 'words';
  const tokens = scan(text);
  const said = tokens.flatMap((token) => (token.kind === 'notation' && !token.said.isNote ? [token.said] : []));
  const [name] = readPiece({ place: { line: 0, column: null, text }, column: null }).words;
  if (name !== undefined && isNamed(exercises, name)) return 'sets';
  const saysHowMany = said.some(
    ({ found = [], refused }) =>
      // How hard it is to be may hold for others.
      (refused && refused.field !== 'reserve') ||
      found.some(({ field }) => field === 'sets' || field === 'repetitions' || field === 'load'),
  );
  if (saysHowMany || hasNumbersTogether(tokens)) return 'sets';
  return said.length > 0 ? 'instruction' : 'words';
}

/** Numbers one after the other may be sets and repetitions; a lone one is a year or the number of a block. */
function hasNumbersTogether(tokens: readonly Token[]): boolean {
  const others = tokens.filter((token) => !isJoint(token));
  const isNumber = (token: Token | undefined) => token?.kind === 'number' || token?.kind === 'unknown';
  return others.some((token, i) => isNumber(token) && isNumber(others[i + 1]));
}

function refuseRepeat(line: number, value: string): NotRead {
  return notRead(line, null, {
    value,
    expected: 'the sets of a week',
    remedy: 'Paste the week that it repeats; once that is taken over, “Copy week” makes the others of it.',
  });
}

function refuseInstruction(line: number, value: string): NotRead {
  return notRead(line, null, {
    value,
    expected: 'the sets of an exercise',
    remedy: 'What holds for several lines is to be written on each of them.',
  });
}
