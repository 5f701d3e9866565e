/** Names of exercises as they are compared: whatever the case, hyphens, plurals and abbreviated equipment. */

/** Abbreviations of equipment, as common in training logs. */
const EQUIPMENT: ReadonlyMap<string, string> = new Map([
  ['db', 'dumbbell'],
  ['dumbell', 'dumbbell'],
  ['bb', 'barbell'],
  ['barbel', 'barbell'],
  ['kb', 'kettlebell'],
]);

/** “DB Bench-Presses” → dumbbell, bench, press: small words in the singular, equipment in full. */
export function nameWords(name: string): readonly string[] {
  return name
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[’'.]/gu, '')
    .split(/[^\p{L}\p{N}]+/u)
    .filter(Boolean)
    .map((word) => EQUIPMENT.get(word) ?? singularOf(word));
}

/** Equal for two names that are one exercise's: “Pull-ups”, “pullup” and “pull up”. */
export function foldName(name: string): string {
  return nameWords(name).join('');
}

/** English plurals as far as they occur in names of exercises; the same for every word that is compared. */
function singularOf(word: string): string {
  if (/ies$/u.test(word)) return word.replace(/ies$/u, 'y');
  if (/(?:ss|sh|ch|x)es$/u.test(word)) return word.replace(/es$/u, '');
  return word.replace(/([^s])s$/u, '$1');
}
