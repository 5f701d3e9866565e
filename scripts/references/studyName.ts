/** Names of studies: family name of the first author and year, with a letter where a name is there already. */
import { readAuthors } from '../../src/evidence/authors.ts';

interface Named {
  readonly authors: string;
  readonly year: string;
}

/**
 * Names for new studies in their order. Rows that are there keep theirs: beside “Plover 2012” a second
 * one becomes “Plover 2012b”. Two new ones of a name that nobody has become “Plover 2012a” and “…b”.
 *
 * @param taken names of the studies in the table
 */
export function nameStudies(studies: readonly Named[], taken: readonly string[]): readonly string[] {
  const bases = studies.map(({ authors, year }) => `${readAuthors(authors)[0].family} ${year}`);
  const highest = new Map<string, number>();
  const used = (base: string) => highest.get(fold(base)) ?? Math.max(0, ...taken.map((name) => rank(name, base)));
  return bases.map((base) => {
    const isAlone = bases.filter((other) => fold(other) === fold(base)).length === 1;
    const before = used(base);
    highest.set(fold(base), before + 1);
    return before === 0 && isAlone ? base : base + letters(before + 1);
  });
}

/** Place of a name among those of the base: 1 without a letter or with “a”, 2 with “b”; 0 where it is another name. */
function rank(name: string, base: string): number {
  if (!fold(name).startsWith(fold(base))) return 0;
  const rest = fold(name).slice(fold(base).length);
  if (rest === '') return 1;
  if (!/^[a-z]{1,2}$/u.test(rest)) return 0;
  return [...rest].reduce((place, letter) => 26 * place + (letter.charCodeAt(0) - 96), 0);
}

/** 1 is a, 26 is z, 27 is aa. */
function letters(place: number): string {
  const rest = (place - 1) % 26;
  return (place > 26 ? letters((place - 1 - rest) / 26) : '') + String.fromCharCode(97 + rest);
}

function fold(name: string): string {
  return name.normalize('NFC').toLowerCase();
}
