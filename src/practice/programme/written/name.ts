/** The exercise of a line: taken where the list has the name, asked about where it only has one near it. */
import type { NamedExercise } from '../../../evidence/exerciseNames.ts';
import { findNamed } from '../../../evidence/findNamed.ts';
import { type Assumed, type NotRead, notRead, type Place, type Reading } from './understood.ts';

export interface ReadName {
  readonly exercise: Reading<string>;
  readonly assumed: readonly Assumed[];
  readonly notRead: readonly NotRead[];
}

/** @param written name as it stands at the place */
export function readName(written: string, place: Place, exercises: readonly NamedExercise[]): ReadName {
  const found = findNamed(exercises, written);
  const take = (value: string, assumed: readonly string[]): ReadName => ({
    exercise: { value, readFrom: { ...place, text: written } },
    assumed: assumed.map((said) => ({ said, of: ['exercise'] })),
    notRead: [],
  });
  switch (found.kind) {
    case 'named':
      return take(found.exercise.name, []);
    case 'synonym':
      return take(found.exercise.name, [`“${written}” is taken as ${found.exercise.name}.`]);
    case 'near':
      return { ...take(written, []), notRead: [askName(written, place, found.suggestions)] };
    case 'unknown':
      return take(written, [
        `“${written}” is kept as an exercise of your own: its cautions are not known, so that the careful ones stand until it is described.`,
      ]);
  }
}

function askName(written: string, { line }: Place, suggestions: readonly NamedExercise[]): NotRead {
  const names = suggestions.map(({ name }) => name);
  return notRead(
    line,
    'exercise',
    {
      value: written,
      expected: 'an exercise of the list',
      remedy: `Is it ${names.join(', or ')}? Choose one, or keep the name as your own: then its cautions are not known, and the careful ones stand until it is described.`,
    },
    names,
  );
}
