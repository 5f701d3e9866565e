/** What the check found of the lifters' own loads: of one line by lifter, and what is to be looked at before a sheet is printed. */
import { showValue } from '../evidence/problem.ts';
import { listFirst } from '../numerics/countOf.ts';
import type { LifterLine, LifterLines } from '../practice/lifters/judge.ts';
import { explainAverages, stateEffect } from '../practice/lifters/step.ts';
import { explainToCoach, tellLoadToCoach } from '../practice/lifters/tellCoach.ts';
import { roundingOf } from '../practice/lifters/tellLine.ts';
import { writeDay } from '../practice/programme/columns.ts';
import { lowerFirst, upperFirst } from './firstLetter.ts';
import { formatPlain } from './format.ts';
import { stateAgainst } from './programmeFindings.ts';

/** Names that a sentence carries; the rest are counted. */
const MOST_NAMED = 12;

/**
 * Of a line whose load is a weight: what it is for each lifter, those of one verdict together.
 *
 * @param lines of every lifter, for this line
 */
export function stateByLifter(
  lines: readonly { readonly name: string; readonly line: LifterLine }[],
): readonly string[] {
  const groups = new Map<string, string[]>();
  for (const { name, line } of lines) {
    const verdict = stateVerdict(line);
    const share = line.load.kind === 'weight' ? ` (${formatPlain(line.load.actual)}\u00a0% of 1RM)` : '';
    groups.set(verdict, [...(groups.get(verdict) ?? []), `${showValue(name)}${share}`]);
  }
  return [...groups].map(([verdict, names]) => {
    return `${listFirst(names, MOST_NAMED)}: ${verdict}`;
  });
}

function stateVerdict(line: LifterLine): string {
  const { load, checked } = line;
  if (load.kind === 'above 1RM') return 'above 1RM: it cannot be lifted once.';
  if (load.kind === 'no 1RM' || load.kind === 'wrong 1RM') return lowerFirst(explainToCoach(load) ?? '');
  if (load.kind !== 'weight' || !checked) return 'not judged.';
  return endSentence(stateAgainst(checked));
}

function endSentence(words: string): string {
  return `${words.replace(/\.$/u, '')}.`;
}

export interface ToLookAt {
  readonly id: number;
  /** “Monday, barbell back squat, 107.5 kg” */
  readonly place: string;
  /** A sentence each, at least one. */
  readonly said: readonly string[];
}

/** Lines of a lifter that a coach should look at before the sheet is handed out. */
export function listToLookAt({ lines }: LifterLines): readonly ToLookAt[] {
  return lines.flatMap((line) => {
    const said = sayOf(line);
    const day = line.day === null ? 'no day' : writeDay(line.day);
    return said.length > 0
      ? [{ id: line.id, place: `${day}, ${line.exercise}, ${tellLoadToCoach(line.load)}`, said }]
      : [];
  });
}

/** What is to be known, once, of the repetitions that rounding leaves in those lines; null where none are told. */
export function explainRounding({ lines }: LifterLines): string | null {
  return explainAverages(
    lines.flatMap((line) => {
      const effect = roundingOf(line);
      return effect ? [{ exercise: line.exercise, effect }] : [];
    }),
  );
}

function sayOf(line: LifterLine): readonly string[] {
  const { load, checked, unsafe, problems } = line;
  if (load.kind === 'above 1RM') return [explainToCoach(load)].filter((one) => one !== null);
  const rounding = roundingOf(line);
  const isToSay = checked?.unsafe || checked?.against === 'closer' || checked?.against === 'questioned';
  const guard =
    unsafe && !checked ? ['Not judged; alone under a load that can pin, less than safety asks for is left.'] : [];
  return [
    ...(checked && isToSay ? [endSentence(upperFirst(stateAgainst(checked)))] : guard),
    ...[explainToCoach(load)].filter((one) => one !== null),
    ...(rounding ? [stateEffect(rounding)] : []),
    ...problems.map(upperFirst),
  ];
}
