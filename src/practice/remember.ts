/** Answers that are asked for again, kept as long as the analysis they were read from. */

/**
 * @param make works the answer out from the source and what the key says, and from nothing else
 * @returns a function that remembers
 */
export function rememberBy<Source extends object, Answer>(): (
  source: Source,
  key: string,
  make: () => Answer,
) => Answer {
  const bySource = new WeakMap<Source, Map<string, Answer>>();
  return (source, key, make) => {
    const answers = bySource.get(source) ?? new Map<string, Answer>();
    bySource.set(source, answers);
    const known = answers.get(key);
    if (known !== undefined) return known;
    const made = make();
    answers.set(key, made);
    return made;
  };
}
