/** The file of exercises into the list, apart from what a page needs to know of one: it brings all that reads a table. */
import type { RowOf } from './column.ts';
import { EXERCISE_COLUMNS, type ListedExercise, splitMuscles, splitNames } from './exercises.ts';
import { foldName } from './foldName.ts';
import { pairWithFirst } from './groupRows.ts';
import { type Problem, sortByLine } from './problem.ts';
import { readTable, type Table } from './table.ts';

/** Reads `exercises.csv`. Nothing is thrown, whatever the text. */
export function readExercises(text: string, file: string): Table<ListedExercise> {
  const { rows, problems, warnings } = readTable<RowOf<typeof EXERCISE_COLUMNS>>(
    text,
    file,
    EXERCISE_COLUMNS,
    ({ muscles, line }) =>
      splitMuscles(muscles).length > 0
        ? []
        : [
            {
              kind: 'wrong-value',
              file,
              line,
              column: 'muscles',
              value: muscles,
              expected: 'at least one muscle',
              remedy: null,
            },
          ],
  );
  return {
    rows: rows.map((row) => ({
      name: row.exercise,
      muscles: splitMuscles(row.muscles),
      canPin: row.can_pin,
      stoppable: row.stoppable,
      partials: row.partials,
      relation: row.repetitions_as === 'general' ? null : row.repetitions_as,
      synonyms: splitNames(row.synonyms ?? ''),
    })),
    problems: sortByLine([...problems, ...findSharedNames(rows, file)]),
    warnings,
  };
}

/** Names and synonyms that two lines would both be found by. */
function findSharedNames(rows: readonly RowOf<typeof EXERCISE_COLUMNS>[], file: string): Problem[] {
  const names = rows.flatMap(({ exercise, synonyms, line }) => [
    { name: exercise, column: 'exercise', line },
    ...splitNames(synonyms ?? '').map((name) => ({ name, column: 'synonyms', line })),
  ]);
  return pairWithFirst(names, ({ name }) => foldName(name)).map(({ row: { name, column, line }, first }) => ({
    kind: 'duplicate',
    file,
    line,
    column,
    value: name,
    expected: `an exercise that line ${first.line} does not name already`,
    remedy: column === 'exercise' ? 'Remove one of the two lines.' : 'Remove one of the two names.',
  }));
}
