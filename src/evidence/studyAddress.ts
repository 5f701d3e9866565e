/**
 * The part of an address that names a study: lower-case Latin letters, digits and hyphens, whatever the
 * name holds, and different for every study of a table.
 */

/** Characters of a name that its address takes; a number after them tells equal ones apart. */
const LONGEST = 60;

/** Letters that do not come apart into a Latin letter and a mark. */
const LATIN: Readonly<Record<string, string>> = {
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
  ø: 'o',
  đ: 'd',
  ð: 'd',
  þ: 'th',
  ł: 'l',
  ı: 'i',
};

/**
 * Names → addresses. Numbers go to equal ones in the order of the names, not of the table, so that
 * another order of rows moves no address.
 */
export function addressStudies(names: Iterable<string>): ReadonlyMap<string, string> {
  const sorted = [...new Set(names)].sort();
  const plain = new Set(sorted.map(makePlain));
  /** Number that the last name of a plain address got. */
  const numbers = new Map<string, number>();
  return new Map(
    sorted.map((name) => {
      const base = makePlain(name);
      let number = (numbers.get(base) ?? 0) + 1;
      // A number that makes another study's plain address is passed over.
      while (number > 1 && plain.has(`${base}-${number}`)) number++;
      numbers.set(base, number);
      return [name, number === 1 ? base : `${base}-${number}`];
    }),
  );
}

function makePlain(name: string): string {
  const words = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[ßæœøđðþłı]/gu, (letter) => LATIN[letter])
    .replace(/[^a-z0-9]+/gu, '-')
    .slice(0, LONGEST)
    .replace(/^-|-$/gu, '');
  return words || 'study';
}
