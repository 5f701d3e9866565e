/** What an answer rests on and what it would take to have one, and how the papers behind it were read. */
import type { TableReading } from '../evidence/reading.ts';
import type { BandBase } from '../model/evidenceBase.ts';
import { LEAST_TARGET_STUDIES } from '../model/target.ts';
import { countOf, countStudies } from '../numerics/countOf.ts';
import { LEAST_ADVICE_STUDIES } from './chooseReserve.ts';
import { LOAD_NAMES } from './loadNames.ts';

const NEEDED = `A target takes at least ${LEAST_TARGET_STUDIES} studies, advice at least ${LEAST_ADVICE_STUDIES}`;

/** A sentence for each band without a target: its studies, those that compare reserves, and how many it takes. */
export function stateNeeds(base: readonly BandBase[]): readonly string[] {
  return base
    .filter(({ hasTarget }) => !hasTarget)
    .map(({ band, rows, studies, comparing }) => {
      const there = `With ${LOAD_NAMES[band]} the table has ${countOf(rows, 'row')} of ${countStudies(studies)} whose reserve, load and change with its error are known`;
      return `${there}; ${countStudies(comparing)} of them ${comparing === 1 ? 'compares' : 'compare'} two or more reserves. ${NEEDED}, and what reserve does is seen best in those that compare it.`;
    });
}

/** “Read from abstracts”, or what fits the table, as a heading inside a line. */
export function nameReading({ notInFull, secondHand }: TableReading): string {
  if (secondHand === 0) return 'Read from abstracts.';
  return secondHand === notInFull.rows ? 'Read second-hand.' : 'Not read in full.';
}

/** How much of the table was not read in full, how much of it carries the answer of each band, and what is missing. */
export function stateReading({ table, notInFull, secondHand }: TableReading, base: readonly BandBase[]): string {
  const all = notInFull.rows === table.rows;
  const which = all
    ? `${countOf(table.rows, 'row')} of ${countStudies(table.studies)}`
    : `${notInFull.rows.toLocaleString('en')} of ${countOf(table.rows, 'row')}, in ${notInFull.studies.toLocaleString('en')} of ${countStudies(table.studies)},`;
  const from =
    secondHand === 0
      ? 'abstracts'
      : secondHand === notInFull.rows
        ? 'other papers that quote them'
        : `abstracts or, ${secondHand.toLocaleString('en')} of them, other papers`;
  const carried = base.map(
    ({ band, rows, studies }) => `${countOf(rows, 'row')} of ${countStudies(studies)} with ${LOAD_NAMES[band]}`,
  );
  const without = base.filter(({ hasTarget }) => !hasTarget);
  const comparing = without.map(({ band, comparing }) => `${comparing} with ${LOAD_NAMES[band]}`);
  const missing =
    without.length === 0 ? '' : ` ${NEEDED}; two or more known reserves are compared by ${comparing.join(' and ')}.`;
  return `${all ? 'All ' : ''}${which} come from ${from}, not from the full papers. For the answer count ${carried.join(' and ')}.${missing}`;
}
