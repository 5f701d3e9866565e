/** The values of a line, each once and held to what its column allows. */
import { PROGRAMME_COLUMNS } from '../columns.ts';
import { EXAMPLES } from './examples.ts';
import type { ReadPiece } from './piece.ts';
import { FIELDS, type Field, type Found, type NotRead, notRead, type Place, type SetFields } from './understood.ts';

const FAILING = /failure/iu;

/** @param told takes what contradicts itself or is not allowed; such a field is null */
export function takeFields(read: readonly ReadPiece[], line: number, told: NotRead[]): SetFields {
  const taken = FIELDS.map((field) => [field, takeField(field, read, line, told)]);
  // Every field was asked for, and each value comes from a notation of its own field.
  return Object.fromEntries(taken) as SetFields;
}

interface Entry {
  readonly value: Found['value'];
  readonly text: string;
  readonly cell: Place;
}

function takeField(field: Field, read: readonly ReadPiece[], line: number, told: NotRead[]) {
  const [first, ...others] = read.flatMap(({ found, place }) =>
    found
      .filter((one) => one.found.field === field)
      .map((one): Entry => ({ value: one.found.value, text: one.text, cell: place })),
  );
  if (!first) return null;
  // Two columns may say the same; one text that says it twice holds two exercises, or two kinds of sets.
  const other = others.find(
    (one) => !isSame(one.value, first.value) || (one.cell === first.cell && !isFailureToo(one, first)),
  );
  const refused = other
    ? {
        value: [first, ...others].map(({ text }) => text).join(' and '),
        expected: `one entry for ${field}`,
        remedy: 'Write a line for each exercise, and for each kind of sets of it.',
      }
    : isAllowed(first.value, field)
      ? null
      : { value: first.text, expected: PROGRAMME_COLUMNS[field].expected, remedy: remedyFor(field) };
  if (refused) told.push(notRead(line, field, refused));
  return refused ? null : { value: first.value, readFrom: { ...first.cell, text: first.text } };
}

/** What to look at where a number is none that its column allows. */
function remedyFor(field: Field): string | null {
  if (field === 'company') return null;
  return field === 'sets' || field === 'repetitions'
    ? 'Write sets before repetitions, “4x6” for 4 sets of 6, and the load apart from them, with its unit: “80%”.'
    : `Look whether the number is one of another column, or has another unit; write it as “${EXAMPLES[field].one}”.`;
}

/** “0 RIR (failure)” says one thing in two ways. */
function isFailureToo({ text }: Entry, first: Entry): boolean {
  return FAILING.test(text) !== FAILING.test(first.text);
}

function isSame(a: Found['value'], b: Found['value']): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

function isAllowed(value: Found['value'], field: Field): boolean {
  if (typeof value === 'string') return true;
  // A weight is held to the 1RM only once that is known.
  if ('unit' in value && value.unit !== '%') return value.least > 0 && Number.isFinite(value.most);
  const { cell } = PROGRAMME_COLUMNS[field];
  return [value.least, value.most].every((end) => cell.safeParse(String(end)).success);
}
