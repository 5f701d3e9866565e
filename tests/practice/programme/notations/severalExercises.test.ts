/** A name that comes on a line without sets of its own: a line that asks for them, and nothing of it goes to another. */
import { describe, expect, it } from 'vitest';
import { readLines } from './readLine.ts';

const linesOf = (text: string) =>
  readLines(text).cells.map(({ exercise, sets, load, note }) => [exercise, sets, load, note]);

describe('a second exercise without sets', () => {
  it.each([
    ['squat 3x5; bech press 80%', ['squat', '3', '', ''], ['bech press', '', '80', '']],
    ['squat 3x5, paused bench 75%', ['squat', '3', '', ''], ['paused bench', '', '75', '']],
    ['squat 3x5 80%; bech press', ['squat', '3', '80', ''], ['bech press', '', '', '']],
    ['squat 3x5; benhc press 80%', ['squat', '3', '', ''], ['benhc press', '', '80', '']],
    ['squat 3x5 80% + RDL', ['squat', '3', '80', ''], ['Romanian deadlift', '', '', '']],
    ['squat 3x5 80%, Thu bech press 75%', ['squat', '3', '80', ''], ['bech press', '', '75', '']],
  ])('%j is a line of its own', (text, ...lines) => {
    expect(linesOf(`Mon ${text}`)).toEqual(lines);
    expect(readLines(`Mon ${text}`).asked.join()).toMatch(/Write sets and repetitions/u);
  });

  it.each([
    ['squat 3x5; low bar 80%', ['squat', '3', '80', 'low bar']],
    ['squat 3x5 80%; deep', ['squat', '3', '80', 'deep']],
    ['bench press 3x5 80%, bench arched', ['bench press', '3', '80', 'bench arched']],
    ['4x6 80%, back squat', ['barbell back squat', '4', '80', '']],
    ['paused 3x5, chest up 80%', ['paused', '3', '80', 'chest up']],
  ])('is none in %j', (text, line) => {
    expect(linesOf(`Mon ${text}`)).toEqual([line]);
  });
});
