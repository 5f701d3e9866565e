/** Recent situations: five at most, newest first, said in words; what a browser holds that is none of them costs nothing. */
import { describe, expect, it } from 'vitest';
import {
  addRecent,
  MOST_RECENT,
  openSituation,
  readRecent,
  tellSituation,
} from '../../../src/islands/target/recentSituations.ts';

const EXERCISES = ['squat', 'leg press', 'bench press'];
const words = (query: string) => {
  const situation = openSituation(query, EXERCISES);
  return situation && tellSituation(situation);
};

describe('recent situations', () => {
  it('are the last five, each once, the newest first', () => {
    const queries = Array.from({ length: 8 }, (_, i) => `?load=${60 + i}`);
    const kept = queries.reduce<readonly string[]>((list, query) => addRecent(list, query, null), []);
    expect(kept).toEqual(['?load=67', '?load=66', '?load=65', '?load=64', '?load=63']);
    expect(addRecent(kept, '?load=65', null)).toEqual(['?load=65', '?load=67', '?load=66', '?load=64', '?load=63']);
    expect(kept).toHaveLength(MOST_RECENT);
  });

  it('put a step of the same set in the place of the one before, and never the page’s beginning', () => {
    const kept = addRecent(['?load=60', '?exercise=squat'], '?load=61', '?load=60');
    expect(kept).toEqual(['?load=61', '?exercise=squat']);
    expect(addRecent(kept, '', null)).toBe(kept);
  });

  it.each([
    [
      '?exercise=squat&load=80&company=spotter&hours=30',
      /^squat at 80\u00a0% of 1RM, for growth, spotter, event 30 hours away$/u,
    ],
    [
      '?purpose=strength%2C+main+lift&exercise=another&planned=1',
      /^another exercise \(can pin\) at 75\u00a0% of 1RM, for strength, main lift, 1 repetition planned, alone$/u,
    ],
    [
      '?judgement=own+test+sets&sets=2-4+3-3&keep=80&status=untrained',
      /untrained, 2 test sets, 80\u00a0% of growth kept$/u,
    ],
  ])('tell %s in words', (query, expected) => expect(words(query)).toMatch(expected));

  it('differ in words where they differ in what is chosen', () => {
    const base = '?exercise=squat&load=80';
    const changes = ['', '&hours=20', '&company=spotter', '&status=untrained', '&judgement=as+most+people', '&keep=80'];
    const told = changes.map((change) => words(base + change));
    expect(new Set(told).size).toBe(changes.length);
    const facts = ['', '&pins=no', '&stops=yes', '&partials=yes', '&pins=no&stops=yes&partials=yes'];
    expect(new Set(facts.map((fact) => words(`?exercise=another${fact}`))).size).toBe(facts.length);
  });

  it.each([
    [null, []],
    ['', []],
    ['{"a":1}', []],
    ['[1,"?load=80"]', []],
    ['["?load=80","?load=80",""]', ['?load=80']],
    ['["javascript:alert(1)","load=80","?load=5","?colour=red","?exercise=juggling","?load=80"]', ['?load=80']],
    [
      JSON.stringify(Array.from({ length: 9 }, (_, i) => `?load=${60 + i}`)),
      ['?load=60', '?load=61', '?load=62', '?load=63', '?load=64'],
    ],
  ])('are read from %s as what there is of them', (text, expected) =>
    expect(readRecent(text, EXERCISES)).toEqual(expected),
  );
});
