/** What an answer rests on and what it would take to have one, and how the papers behind it were read. */
import type { TableReading } from '../evidence/reading.ts';
import type { BandBase } from '../model/evidenceBase.ts';
import { LEAST_TARGET_STUDIES } from '../model/target.ts';
import { countOf, countStudies } from '../numerics/countOf.ts';
import { LEAST_ADVICE_STUDIES } from './chooseReserve.ts';
import { LOAD_NAMES } from './loadNames.ts';

/** Of an answer that is missing: how many studies it takes, and what they must show. */
const NEEDED = `at least ${LEAST_TARGET_STUDIES} studies, to advise a lifter at least ${LEAST_ADVICE_STUDIES}, and a difference of reserve that more than one of them shows`;

/** What the bands without a target have and what it takes, in one sentence or two; empty where every band has one. */
export function stateNeeds(base: readonly BandBase[]): string {
  const without = base.filter(({ hasTarget }) => !hasTarget);
  if (without.length === 0) return '';
  const have = without.map(
    ({ band, rows, studies, comparing }) =>
      `${LOAD_NAMES[band]} ${countOf(rows, 'row')} of ${countStudies(studies)}, ${comparing.toLocaleString('en')} of these with two or more known reserves`,
  );
  return `Reserve, load and change with its error are known, with ${have.join('; with ')}. A target takes ${NEEDED}.`;
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
  const needs = stateMissing(base);
  return `${all ? 'All ' : ''}${which} come from ${from}, not from the full papers. For the answer count ${carried.join(' and ')}.${needs}`;
}

function stateMissing(base: readonly BandBase[]): string {
  const without = base.filter(({ hasTarget }) => !hasTarget);
  if (without.length === 0) return '';
  const names = without.map(({ band }) => LOAD_NAMES[band]).join(' and ');
  const comparing = without.map(({ band, comparing }) => `${comparing.toLocaleString('en')} with ${LOAD_NAMES[band]}`);
  return ` They carry no target for ${names}: that takes ${NEEDED}. Studies with two or more known reserves: ${comparing.join(', ')}.`;
}
