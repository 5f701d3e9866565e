/**
 * What a column of a table is: how a cell is read, what is expected of it in words, and what the
 * data dictionary says. One definition serves validation, messages, documentation and types.
 */
import * as z from 'zod/mini';
import './zodConfig.ts';

/** Type and constraints in the terms of Table Schema (Frictionless Data, 2017). */
export interface TableSchemaField {
  readonly type: 'string' | 'number' | 'integer' | 'boolean';
  readonly constraints: Readonly<Record<string, number | boolean | string | readonly string[]>>;
  readonly trueValues?: readonly string[];
  readonly falseValues?: readonly string[];
}

export interface Column<Value, Required extends boolean = boolean> {
  readonly group: string;
  /** Unit of the number; null for words and pure numbers. */
  readonly unit: string | null;
  readonly required: Required;
  /** What a cell must be, completing "expected …". */
  readonly expected: string;
  /** Reads a trimmed cell that is not empty. Made at the first cell (`z.lazy`): many pages know columns and read none. */
  readonly cell: z.ZodMiniType<Value, string>;
  readonly field: TableSchemaField;
  /** The range that a valid cell stands for, where it holds one in place of a number; null where it is a number. */
  readonly rangeOf?: (cell: string) => CellRange | null;
  /** Of a column that may hold ranges: type and constraints of a number and of either end. */
  readonly endField?: TableSchemaField;
}

/** A column with what a person is told of it. */
export interface DescribedColumn<Value, Required extends boolean = boolean> extends Column<Value, Required> {
  readonly description: string;
  readonly example: string;
}

/** A range as it was printed, both ends included, and what the cell counts as: null where no number stands for it. */
export interface CellRange {
  readonly low: number;
  readonly high: number;
  readonly value: number | null;
}

/** A cell that was empty and filled from others of its row. */
export interface Derived {
  readonly column: string;
  readonly value: number;
  /** SD of what it may really have been, in its unit; null where that is not known. */
  readonly sd: number | null;
  readonly how: string;
  /** Whether it follows from what is printed, or an assumption stands behind it. */
  readonly restsOn: 'recovered' | 'assumed';
}

/** Type of a validated cell: null where an optional cell is empty. */
export type CellOf<C extends Column<unknown>> = z.output<C['cell']> | (C['required'] extends true ? never : null);

/** A validated row of a table with these columns; keys are the column names. */
export type RowOf<Columns extends Readonly<Record<string, Column<unknown>>>> = {
  readonly [Name in keyof Columns]: CellOf<Columns[Name]>;
} & {
  /** Physical line in the file; the header is line 1. */
  readonly line: number;
};

/** What is said of a column by hand; the kind of its cells says the rest. */
export interface About {
  readonly group: string;
  readonly required: boolean;
  readonly unit?: string;
}

/** A column of what was said of it, its meaning too where that stands there. */
export type ColumnOf<Value, A extends About> = Column<Value, A['required']> & Omit<A, 'unit'>;

/** Characters a name or a note may have: far above any real one, far below what would clog a page. */
const LONGEST_TEXT = 500;

/**
 * Characters that nobody sees: two names that differ in one look alike and would count as two studies. The joiners
 * U+200C and U+200D stay, since some scripts are not written without them.
 */
const UNSEEN_CHARACTERS = /(?![\u200c\u200d])[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u;
/** What a browser would take for the start of a tag, comment or entity declaration. */
export const MARKUP = /<[a-z/!?]/iu;
/**
 * Signs at which a spreadsheet starts to calculate: at the start of a cell, and after a semicolon, which splits cells
 * where a comma is the decimal sign, inside quotation marks too once the file was split in the wrong places.
 */
export const FORMULA = /(?:^|;)[=+\-@]/u;

const plainText = z.string().check(z.refine((text) => whyNotPlain(text) === null));

/** What keeps a text from being plain, as the remedy of its problem; null where it is plain. */
export function whyNotPlain(text: string): string | null {
  if (text.length > LONGEST_TEXT) return `It has ${text.length} characters; shorten it.`;
  if (UNSEEN_CHARACTERS.test(text)) return 'Remove the line breaks and unseen characters.';
  if (text.includes('\ufffd')) return 'It has a “\ufffd” where a character was lost; write the character.';
  if (MARKUP.test(text)) return 'It looks like markup; take out what follows the “<”.';
  // Spaces round a cell are not part of it, so that one before its first sign would change nothing.
  if (/^[=+\-@]/u.test(text)) return 'A spreadsheet would calculate it; put a letter or a digit before the sign.';
  if (FORMULA.test(text)) return 'A spreadsheet would calculate it; put a space after the semicolon.';
  return null;
}

/** A column of words. */
export function text<const A extends About>(about: A): ColumnOf<string, A> {
  return {
    unit: null,
    ...about,
    expected: `plain text of up to ${LONGEST_TEXT} characters, without markup or control characters, not starting with = + - or @ nor having one right after a semicolon`,
    cell: plainText,
    field: { type: 'string', constraints: { required: about.required, maxLength: LONGEST_TEXT } },
  };
}

/** A column of words from a list. @param words every one that a cell may hold */
export function oneOf<const Word extends string, const A extends About>(
  words: readonly Word[],
  about: A,
): ColumnOf<Word, A> {
  return {
    unit: null,
    ...about,
    expected: `one of ${words.join(', ')}`,
    cell: z.lazy(() => z.enum(words)),
    field: { type: 'string', constraints: { required: about.required, enum: words } },
  };
}

/** A column of `yes` and `no`, read as true and false. */
export function yesOrNo<const A extends About>(about: A): ColumnOf<boolean, A> {
  return {
    unit: null,
    ...about,
    expected: 'yes or no',
    cell: z.lazy(() =>
      z.pipe(
        z.enum(['yes', 'no']),
        z.transform((word) => word === 'yes'),
      ),
    ),
    field: { type: 'boolean', constraints: { required: about.required }, trueValues: ['yes'], falseValues: ['no'] },
  };
}

/** The same column, of which words may also be written in capitals. */
export function anyCase<Value, Required extends boolean>(
  column: DescribedColumn<Value, Required>,
): DescribedColumn<Value, Required> {
  const lower = () =>
    z.pipe(
      z.string(),
      z.transform((written: string) => written.toLowerCase()),
    );
  return { ...column, cell: z.lazy(() => z.pipe(lower(), column.cell)) };
}

/** Limits of a number; "above" and "below" exclude the limit, "from" and "to" include it. */
export interface Limits {
  readonly from?: number;
  readonly to?: number;
  readonly above?: number;
  readonly below?: number;
}

/** Digits with a decimal point and an exponent at most: no words, hexadecimals, commas or per cent signs. */
const DECIMAL = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/iu;

/** A column of numbers within limits. */
export function number<const A extends About>(limits: Limits, about: A): ColumnOf<number, A> {
  return numeric('number', limits, about);
}

/** A column of whole numbers within limits. */
export function integer<const A extends About>(limits: Limits, about: A): ColumnOf<number, A> {
  return numeric('integer', limits, about);
}

function numeric<const A extends About>(type: 'number' | 'integer', limits: Limits, about: A): ColumnOf<number, A> {
  const limitsOf = () => [
    ...(limits.from !== undefined ? [z.gte(limits.from)] : []),
    ...(limits.to !== undefined ? [z.lte(limits.to)] : []),
    ...(limits.above !== undefined ? [z.gt(limits.above)] : []),
    ...(limits.below !== undefined ? [z.lt(limits.below)] : []),
  ];
  // Table Schema has inclusive limits only; the description of the field says where a limit is open.
  const minimum = limits.from ?? limits.above;
  const maximum = limits.to ?? limits.below;
  const value = () => (type === 'integer' ? z.int() : z.number()).check(...limitsOf());
  return {
    unit: null,
    ...about,
    expected: stateNumber(type, limits),
    cell: z.lazy(() => z.pipe(z.pipe(z.string().check(z.regex(DECIMAL)), z.transform(Number)), value())),
    field: {
      type,
      constraints: {
        required: about.required,
        ...(minimum !== undefined ? { minimum } : {}),
        ...(maximum !== undefined ? { maximum } : {}),
      },
    },
  };
}

/** “a number from 0 to 30”, “a whole number from 2”, “a number above −1 and below 1”. */
function stateNumber(type: 'number' | 'integer', { from, to, above, below }: Limits): string {
  const start = from !== undefined ? `from ${from}` : above !== undefined ? `above ${above}` : '';
  const end =
    to !== undefined ? `${from !== undefined ? 'to' : 'up to'} ${to}` : below !== undefined ? `below ${below}` : '';
  const and = above !== undefined && end !== '' ? 'and' : '';
  const upwards = from !== undefined && end === '' ? 'up' : '';
  return [type === 'integer' ? 'a whole number' : 'a number', start, and, end, upwards].filter(Boolean).join(' ');
}
