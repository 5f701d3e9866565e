/**
 * Any programme in any notation reads to the same programme; and a text that chance has spoilt never loses a
 * number: each is read, stands in the notes, or is asked about.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatProblem } from '../../../src/evidence/problem.ts';
import { timeRatio } from '../../support/timeRatio.ts';
import { notations, programmes, write } from './anyNotation.ts';
import { LINES } from './notations/lines.ts';
import { REFUSED } from './notations/refused.ts';
import { TABLES } from './notations/tables.ts';
import { readWhole } from './written.ts';

describe('any programme in any notation', () => {
  it('reads to the same programme', () => {
    fc.assert(
      fc.property(programmes, notations, (sets, notation) => {
        const text = write(sets, notation);
        const { written, programme, sets: read } = readWhole(text);
        expect(written.notRead.map(formatProblem), text).toEqual([]);
        expect(programme.problems.map(formatProblem), text).toEqual([]);
        expect(read, text).toEqual(sets);
      }),
      { seed: 1717, numRuns: 600 },
    );
  });
});

/** Runs of digits of a line that none of its readings, notes and questions mention. */
function findLostNumbers(text: string) {
  const { written } = readWhole(text);
  return written.lines.flatMap((line) => {
    const { day, exercise, sets, repetitions, load, possible, reserve, company, facts } = line;
    const readings = [day, exercise, sets, repetitions, load, possible, reserve, company, ...Object.values(facts)];
    const said = [
      ...readings.map((reading) => reading?.readFrom.text ?? ''),
      ...line.notes,
      String(line.week ?? ''),
      ...line.unread.map(({ text: unread }) => unread),
      // What two entries say alike is read from one of them.
      ...readings.map((reading) => JSON.stringify(reading?.value ?? '')),
    ].join(' ');
    return (line.text.match(/\d+/gu) ?? [])
      .filter((number) => !said.includes(number))
      .map((number) => ({ number, line }));
  });
}

const ALL = [...Object.values(TABLES), ...Object.values(LINES), ...Object.values(REFUSED).map(([text]) => text)];
const SPOILS = [
  'x',
  ' ',
  '/',
  '-',
  ',',
  '+',
  '%',
  '@',
  '7',
  '\n',
  '\t',
  ';',
  '(',
  'RIR',
  'kg',
  '"',
  'to',
  '.',
  '|',
  'e',
];

describe('a text that chance has spoilt', () => {
  it('throws nothing and loses no number', () => {
    let lines = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...ALL),
        fc.array(fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.constantFrom(...SPOILS, null)), {
          minLength: 1,
          maxLength: 6,
        }),
        (text, spoils) => {
          const spoilt = spoils.reduce((now, [place, sign]) => {
            const at = Math.floor(place * now.length);
            return sign === null ? now.slice(0, at) + now.slice(at + 1) : now.slice(0, at) + sign + now.slice(at);
          }, text);
          expect(findLostNumbers(spoilt), spoilt).toEqual([]);
          lines += readWhole(spoilt).written.lines.length;
        },
      ),
      { seed: 60, numRuns: 600 },
    );
    expect(lines).toBeGreaterThan(1000);
  });

  it.each([
    '',
    '\n\n',
    ' ',
    '\t\t',
    '"',
    '"""',
    'x'.repeat(100_000),
    '1'.repeat(100_000),
    '1,'.repeat(50_000),
    '4x'.repeat(50_000),
    '\u0000\ufffd\ud800',
    '1/'.repeat(5_000),
    'Mon,'.repeat(2_000),
    '((((',
    '-'.repeat(1000),
  ])('and is no programme at all throws nothing (%#)', (text) => {
    expect(readWhole(text).sets).toEqual([]);
  });

  it('and is long is read in a time that grows with its lines', () => {
    const [line] = Object.values(LINES);
    const read = (lines: number) => {
      const text = Array.from({ length: lines }, () => line).join('\n');
      return () => readWhole(text);
    };
    // Four times the lines; twice that leaves room for a busy machine, and squares would be sixteen.
    expect(timeRatio(read(400), read(100))).toBeLessThan(8);
  });
});
