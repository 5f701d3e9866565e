/** A comparison of two tables as lines of text for a terminal. */
import { showValue } from '../../src/evidence/problem.ts';
import { type CellValue, writeCell } from '../../src/evidence/writeTable.ts';
import type { BandChange, TableComparison } from '../../src/model/compareTables.ts';
import type { Estimate, Target } from '../../src/model/result.ts';
import type { NamedRow, RowChanges, StudyRowChanges } from '../../src/model/rowChanges.ts';
import type { BandAnswer, StudyMove } from '../../src/model/studyMoves.ts';
import { writePercent } from '../../src/numerics/percent.ts';

/** Studies whose moves are printed; the JSON has all. */
const SHOWN_MOVES = 10;

export function stateComparison(comparison: TableComparison, old: string, now: string): string {
  const { settings, rowsBefore, rowsAfter, studies, bands, same } = comparison;
  return [
    `old: ${old}, ${rowsBefore} rows`,
    `new: ${now}, ${rowsAfter} rows`,
    `${settings.outcome} against reserve, ${settings.metric}, ${settings.curve}, ${settings.weighting} weighting; intervals ${writePercent(settings.confidence)}`,
    '',
    ...(same ? ['Nothing changed: every study has the same rows.'] : stateStudies(studies)),
    ...bands.flatMap((band) => ['', ...stateBand(band, settings.keptShare, same)]),
  ].join('\n');
}

function stateStudies({ added, removed, renamed, changed, unchanged }: RowChanges): string[] {
  const list = (names: readonly string[]) => (names.length > 0 ? `: ${names.join(', ')}` : '');
  return [
    `Studies added ${added.length}${list(added)}`,
    `Studies removed ${removed.length}${list(removed)}`,
    ...(renamed.length > 0
      ? [`Studies renamed ${renamed.length}${list(renamed.map(({ before, after }) => `${before} is now ${after}`))}`]
      : []),
    `Studies changed ${changed.length}${list(changed.map(({ study }) => study))}`,
    `Studies unchanged ${unchanged.length}`,
    ...changed.flatMap(stateStudy),
  ];
}

function stateStudy({ study, added, removed, changed, unchanged, doubled }: StudyRowChanges): string[] {
  return [
    '',
    `${study}: ${changed.length} row(s) changed, ${added.length} added, ${removed.length} removed, ${unchanged} as before`,
    ...changed.flatMap(({ before, after, cells }) => [
      `  line ${before.line}${after.line === before.line ? '' : `, now ${after.line}`}: ${nameRow(after)}`,
      ...cells.map((cell) => `    ${cell.column}: ${showCell(cell.before)} → ${showCell(cell.after)}`),
    ]),
    ...added.map((row) => `  line ${row.line} of the new table added: ${nameRow(row)}`),
    ...removed.map((row) => `  line ${row.line} of the old table removed: ${nameRow(row)}`),
    ...(doubled.length > 0
      ? [`  ${doubled.length} row(s) share their identity with another and could not be matched one to one`]
      : []),
  ];
}

function nameRow({ arm, exercise, muscle, outcome, measure, unit, hours_after }: NamedRow): string {
  const parts = [arm, exercise, muscle, outcome, measure, unit, hours_after === null ? null : `${hours_after} h`];
  return parts.filter(Boolean).join(', ');
}

function showCell(value: CellValue): string {
  return value === null ? 'nothing' : `“${showValue(writeCell(value))}”`;
}

function stateBand(band: BandChange, keptShare: number, same: boolean): string[] {
  const { before, after, slopeMoved, targetMoved, targetChange, moves, untouched, limits } = band;
  const rest = moves.length - SHOWN_MOVES;
  return [
    band.band.toUpperCase(),
    `  rows of studies   ${before.rows} of ${before.studies} → ${after.rows} of ${after.studies}`,
    `  mean slope        ${stateSlope(before)} → ${stateSlope(after)}; moved by ${signed(slopeMoved, 2)}`,
    `  target at ${writePercent(keptShare).padEnd(8)}${stateTarget(before.target)} → ${stateTarget(after.target)}; ${stateTargetMove(targetChange, targetMoved)}`,
    ...[before, after].flatMap(({ target }, i) =>
      target.reason ? [`  in the ${i === 0 ? 'old' : 'new'} table: ${target.reason}`] : [],
    ),
    ...(moves.length > 0 ? ['  What each change moved (the new table against it without that one change):'] : []),
    ...moves.slice(0, SHOWN_MOVES).map(stateMove),
    ...(rest > 0 ? [`    and ${rest} more, which --json lists`] : []),
    ...(limits ? [`  ${limits}`] : []),
    ...(untouched.length > 0 ? [`  Changed without reaching this fit: ${untouched.join(', ')}`] : []),
    ...(moves.length + untouched.length === 0 && !same ? ['  Studies changed in name only.'] : []),
  ];
}

function stateMove({ study, change, rowsBefore, rowsAfter, slopeMoved, targetMoved, targetChange }: StudyMove) {
  const rows = rowsBefore === rowsAfter ? `${rowsAfter} rows` : `${rowsBefore} → ${rowsAfter} rows`;
  return `    ${study} (${change}, ${rows}): slope moved by ${signed(slopeMoved, 2)}, ${stateTargetMove(targetChange, targetMoved)}`;
}

function stateSlope({ slope, reason }: BandAnswer): string {
  return slope ? `${slope.estimate.toPrecision(3)} (${stateInterval(slope)})` : `none, since ${reason}`;
}

function stateInterval({ ciLow, ciHigh }: Estimate): string {
  return `${ciLow.toPrecision(3)} to ${ciHigh.toPrecision(3)}`;
}

function stateTarget({ point, low, high }: Target): string {
  if (point === null) return 'none';
  return `${point.toFixed(2)} (${low?.toFixed(2) ?? 'not limited'} to ${high?.toFixed(2) ?? 'not limited'})`;
}

function stateTargetMove(change: StudyMove['targetChange'], moved: number | null): string {
  if (change === 'came') return 'there is a target now';
  if (change === 'went') return 'there is no target now';
  if (change === 'none') return 'no target with or without it';
  return `target moved by ${signed(moved, 2)}`;
}

function signed(value: number | null, digits: number): string {
  if (value === null) return 'nothing that has a number';
  if (value === 0) return '0';
  return `${value < 0 ? '−' : '+'}${Math.abs(value).toPrecision(digits)}`;
}
