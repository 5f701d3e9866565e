/** Saved programmes: what is written is read again; anything else is refused with a reason and no crash. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSaved, type SavedProgramme, writeSaved } from '../../../src/practice/programme/saved.ts';
import { exampleToTargets, exampleWeek, exercises, regatta } from './shipped.ts';

const whole: SavedProgramme = {
  first: exampleWeek,
  second: exampleToTargets,
  exercises: exercises.slice(0, 3),
  calendar: regatta,
};

describe('a saved programme', () => {
  it('is read as it was written', () => {
    expect(readSaved(writeSaved(whole)).programme).toEqual(whole);
    const bare = { ...whole, second: null, exercises: [], calendar: { ...regatta, event: null } };
    expect(readSaved(writeSaved(bare)).programme).toEqual(bare);
  });

  it('keeps any text, markup and quotes among it, as text', () => {
    fc.assert(
      fc.property(fc.string(), (first) => {
        expect(readSaved(writeSaved({ ...whole, first })).programme?.first).toBe(first);
      }),
      { seed: 3, numRuns: 200 },
    );
  });

  it.each([
    ['no JSON', 'day,exercise', /no JSON/u],
    ['another kind', '{"kind":"diary","version":1}', /at kind/u],
    ['another version', writeSaved(whole).replace('"version": 1', '"version": 2'), /at version/u],
    ['an hour that no day has', writeSaved(whole).replace('"sessionHour": 19', '"sessionHour": 25'), /sessionHour/u],
    [
      'a field of its own',
      writeSaved(whole).replace('"kind"', '"__proto__": {}, "more": 1, "kind"'),
      /saved by this page/u,
    ],
    ['a list', '[]', /the file/u],
  ])('with %s is refused, and says where', (_, text, reason) => {
    const { programme, problem } = readSaved(text);
    expect(programme).toBeNull();
    expect(problem).toMatch(reason);
  });
});
