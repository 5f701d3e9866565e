/** Several exercises on one line, “squat 4x6 80%, bench press 4x6 75%”, each on its own. */
import { holdsSets } from './layout.ts';
import { isJoint, scan } from './scan.ts';

const BETWEEN = /\s*[;,|]\s+|\s+[+&/|]\s+/u;

/** The line alone where it holds one exercise. */
export function splitExercises(text: string): readonly string[] {
  const parts = text.split(new RegExp(`(${BETWEEN.source})`, 'u'));
  const exercises: string[] = [];
  for (let i = 0; i < parts.length; i += 2) {
    const part = parts[i];
    if (i > 0 && beginsWithName(part) && holdsSets(part)) exercises.push(part);
    else if (exercises.length === 0) exercises.push(part);
    else exercises[exercises.length - 1] += `${parts[i - 1]}${part}`;
  }
  return exercises;
}

function beginsWithName(text: string): boolean {
  const first = scan(text).find((token) => token.kind !== 'joint');
  return first?.kind === 'word' && !isJoint(first);
}
