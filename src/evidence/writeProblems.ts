/**
 * Problems and warnings of a table as a CSV file, to be worked through in a spreadsheet.
 *
 * What it quotes comes from a table that was refused, so nothing in it may calculate or be taken for
 * markup: values stand in “ ” and are cut as in messages, and signs that a spreadsheet or a browser
 * would act on are written as their code points, as unseen characters are.
 */
import Papa from 'papaparse';
import { FORMULA, MARKUP } from './column.ts';
import { type Problem, showValue, writeCodePoint } from './problem.ts';

const FIELDS = ['what', 'line', 'column', 'value', 'expected', 'remedy'] as const;

/**
 * One line a problem, then one a warning.
 *
 * @param problems what keeps the table from being used
 * @param warnings what is possible but should be looked at
 */
export function problemsToCsv(problems: readonly Problem[], warnings: readonly Problem[] = []): string {
  const rows = [
    ...problems.map((problem) => describe('problem', problem)),
    ...warnings.map((warning) => describe('warning', warning)),
  ];
  return `${Papa.unparse([[...FIELDS], ...rows], { newline: '\n' })}\n`;
}

function describe(what: string, { line, column, value, expected, remedy }: Problem): string[] {
  return [
    what,
    line === null ? '' : String(line),
    disarm(showValue(column ?? '')),
    value === '' ? '' : disarm(`“${showValue(value)}”`),
    disarm(expected),
    disarm(remedy ?? ''),
  ];
}

/** Text in which no sign starts a formula or a tag. */
function disarm(text: string): string {
  return text
    .replace(new RegExp(MARKUP, 'giu'), (start) => `${writeCodePoint('<')}${start.slice(1)}`)
    .replace(new RegExp(FORMULA, 'gu'), (start) => `${start.slice(0, -1)}${writeCodePoint(start.slice(-1))}`);
}
