/** “1 row”, “2,000 rows”, “1 study”, “3 studies”: a number of things with the word that goes with it. */
export function countOf(count: number, one: string, several = `${one}s`): string {
  return `${writeCount(count)} ${count === 1 ? one : several}`;
}

/** “999”, “2,000”. A browser takes many milliseconds to get ready for what below a thousand is plain digits. */
export function writeCount(count: number): string {
  return count < 1000 ? String(count) : count.toLocaleString('en');
}

export function countStudies(count: number): string {
  return countOf(count, 'study', 'studies');
}

/** The first names of a list, and how many more there are. */
export function listFirst(names: readonly string[], most: number): string {
  const more = names.length - most;
  return `${names.slice(0, most).join(', ')}${more > 0 ? ` and ${writeCount(more)} more` : ''}`;
}

/** “line 3”, “lines 1, 2”, “lines 1, 2 and 7 more”. @param most lines that are named at once */
export function nameLines(numbers: readonly number[], most = Number.POSITIVE_INFINITY): string {
  return `${numbers.length === 1 ? 'line' : 'lines'} ${listFirst(numbers.map(String), most)}`;
}
