/**
 * Several exercises on one line, “squat 4x6 80%, bench press 4x6 75%”, each on its own; and a name that comes without
 * its sets, so that they are asked for and nothing of it is taken for the exercise before it.
 */
import type { NamedExercise } from '../../../evidence/exerciseNames.ts';
import { isMisspelt, isNamed, isNearlyNamed } from '../../../evidence/findNamed.ts';
import { readContext } from './context.ts';
import { holdsSets } from './layout.ts';
import { readPiece } from './piece.ts';
import { isJoint, scan } from './scan.ts';

const BETWEEN = /\s*[;,|]\s+|\s+[+&/|]\s+/u;

/** The line alone where it holds one exercise. */
export function splitExercises(text: string, exercises: readonly NamedExercise[]): readonly string[] {
  const parts = text.split(new RegExp(`(${BETWEEN.source})`, 'u'));
  const found: string[] = [];
  for (let i = 0; i < parts.length; i += 2) {
    const part = parts[i];
    const before = found.at(-1);
    if (before === undefined || isOther(part, before, exercises)) found.push(part);
    else found[found.length - 1] += `${parts[i - 1]}${part}`;
  }
  return found;
}

function isOther(part: string, before: string, exercises: readonly NamedExercise[]): boolean {
  if (!beginsWithName(part)) return false;
  if (holdsSets(part)) return true;
  const { words, isOfSets } = nameOf(part);
  // Behind sets without a name it is theirs: “4x6 80%, back squat”.
  if (words === null || nameOf(before).words === null) return false;
  if (isNamed(exercises, words)) return true;
  return isOfSets ? isNearlyNamed(exercises, words) : isMisspelt(exercises, words);
}

/** The words that a part begins with, behind its day, and whether it says anything of a set. */
function nameOf(part: string): { readonly words: string | null; readonly isOfSets: boolean } {
  const text = readContext(part)?.rest ?? part;
  const { words, found } = readPiece({ place: { line: 0, column: null, text }, column: null });
  return { words: words[0] ?? null, isOfSets: found.length > 0 };
}

function beginsWithName(text: string): boolean {
  const first = scan(text).find((token) => token.kind !== 'joint');
  return first?.kind === 'word' && !isJoint(first);
}
