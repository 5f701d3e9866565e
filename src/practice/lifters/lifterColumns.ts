/** Columns of a file of lifters: one line is what a lifter can lift once in an exercise. */
import * as z from 'zod/mini';
import { anyCase, type DescribedColumn, oneOf, type RowOf, text } from '../../evidence/column.ts';
import { cleanText } from './lifter.ts';
import { WEIGHT_UNITS } from './weight.ts';

const group = 'lifters';

/** Without the marks of direction that a name was copied with, as it is typed on the page. */
const name = <Required extends boolean>(
  column: DescribedColumn<string, Required>,
): DescribedColumn<string, Required> => ({
  ...column,
  cell: z.pipe(z.pipe(z.string(), z.transform(cleanText)), column.cell),
});

/** Weights stay as they were written: which unit one without is in, the lifter's other lines say (liftersFile.ts). */
const weight = (about: Pick<DescribedColumn<string>, 'description' | 'example'>): DescribedColumn<string, false> => ({
  group,
  required: false,
  unit: 'kg or lb',
  ...about,
  expected: 'a weight',
  cell: z.string(),
  field: { type: 'string', constraints: { required: false } },
});

export const LIFTER_COLUMNS = {
  lifter: name(
    text({ group, required: true, example: 'Lifter A', description: 'Name of the lifter, in words of your own.' }),
  ),
  exercise: name(
    text({
      group,
      required: false,
      example: 'leg press',
      description: 'Name of the exercise; empty where the line says the unit and step of all exercises of the lifter.',
    }),
  ),
  one_rm: weight({ example: '102.5', description: 'What the lifter can lift once in the exercise.' }),
  unit: anyCase(
    oneOf(WEIGHT_UNITS, {
      group,
      required: false,
      example: 'kg',
      description: 'Unit of the line; empty takes the lifter’s, that of the first line which has one.',
    }),
  ),
  step: weight({ example: '2.5', description: 'Smallest step of the load; empty takes the lifter’s.' }),
} as const satisfies Record<string, DescribedColumn<unknown>>;

export type LifterColumn = keyof typeof LIFTER_COLUMNS;
export type WrittenLifterLine = RowOf<typeof LIFTER_COLUMNS>;

/** Other usual heads of the columns. */
const ALSO: Readonly<Record<LifterColumn, readonly string[]>> = {
  lifter: ['name', 'athlete', 'lifters'],
  exercise: ['lift', 'movement', 'exercises'],
  one_rm: ['1rm', 'max', 'maximum', 'weight', 'onerepmax', 'onerepetitionmaximum'],
  unit: ['units'],
  step: ['increment', 'steps'],
};

/** The column that a header cell names, whatever its case and separators; the cell itself where none. */
export function lifterColumnNamed(written: string): string {
  const plain = (word: string) => word.toLowerCase().replace(/[^a-z0-9]/gu, '');
  const found = (Object.keys(LIFTER_COLUMNS) as LifterColumn[]).find((column) =>
    [column, ...ALSO[column]].some((one) => plain(one) === plain(written)),
  );
  return found ?? written;
}
