/**
 * What a lifter is told of a set speaks of the exercise that was chosen and of no other: the number's sentence, why it
 * is as it is, the event, common practice, cautions, and the whole card, over all listed exercises, purposes, company
 * and loads. Other names, their synonyms and muscles that are not the exercise's own count as leaks.
 */
import { h } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { describe, expect, it } from 'vitest';
import { createCalculator } from '../../../src/islands/target/calculator.state.ts';
import { GymCard } from '../../../src/islands/target/GymCard.tsx';
import type { Choices } from '../../../src/islands/target/situationAddress.ts';
import { COMPANIES } from '../../../src/practice/cautions.ts';
import { statePossibleInFull } from '../../../src/practice/possible.ts';
import { PURPOSES } from '../../../src/practice/situation.ts';
import { analysis, exercises } from '../../practice/programme/shipped.ts';

/** Both relations, both ends of the published loads, and the loads at which the stand-in changes. */
const LOADS = [20, 60, 75, 95];
/** Words by which an exercise of the list is known where its whole name is not said. */
const STEMS = ['bench', 'squat', 'deadlift', 'lunge', 'curl', 'press', 'row', 'pulldown', 'crunch', 'dip', 'thrust'];
const namesOf = ({ name, synonyms, muscles }: (typeof exercises)[number]) => [name, ...synonyms, ...muscles];
const WORDS = [...new Set([...STEMS, ...exercises.flatMap(namesOf)])];
/** The word with its plural and the form for doing it: benching, squatting, presses. */
const saying = (word: string) =>
  new RegExp(
    `(?<![\\p{L}-])${word.replace(/[.*+?^$()[\]\\{}|]/gu, '\\$&')}(?:e?s|(?:${word.at(-1)})?ing)?(?![\\p{L}-])`,
    'iu',
  );
const PATTERNS = WORDS.map((word) => [word, saying(word)] as const);

function findOthers(text: string, exercise: (typeof exercises)[number] | null): readonly string[] {
  const own = exercise ? namesOf(exercise).join('; ') : '';
  return PATTERNS.filter(([, pattern]) => pattern.test(text) && !pattern.test(own)).map(([word]) => word);
}

const state = createCalculator({ analysis, shares: [] }, exercises, 'arms.csv');
const textOf = (choices: Partial<Choices>) => {
  state.change(choices);
  const { sentence, adjustments, cautions, event, practice } = state.advice.value;
  const card = renderToString(h(GymCard, { state, isInvented: true })).replace(/<[^>]+>/gu, ' ');
  return [sentence, ...adjustments, ...cautions, event?.sentence ?? '', ...practice, card].join(' ');
};

describe('what is told of a set', () => {
  it('names no exercise and no muscle but the chosen one’s', () => {
    let looked = 0;
    for (const exercise of exercises) {
      for (const purpose of PURPOSES) {
        for (const company of COMPANIES) {
          for (const load of LOADS) {
            const text = textOf({ exercise: exercise.name, purpose, company, load, hours: 30, planned: 8 });
            expect(text).toContain(exercise.name);
            expect(findOthers(text, exercise), `${exercise.name}, ${purpose}, ${company}, ${load}`).toEqual([]);
            looked++;
          }
        }
      }
    }
    expect(looked).toBe(exercises.length * PURPOSES.length * COMPANIES.length * LOADS.length);
    expect(exercises.length).toBeGreaterThan(50);
  });

  it('of an exercise that is described names none either', () => {
    for (const purpose of PURPOSES) {
      const text = textOf({ exercise: 'another', purpose, company: 'alone', load: 75, pins: true, hours: null });
      expect(findOthers(text, null), purpose).toEqual([]);
      expect(text).toMatch(/those of another stand in.*over the chest.*collars off/u);
    }
  });

  it('would be caught: a squat told of benching, of the chest’s muscle, or of what stands in for it', () => {
    const squat = exercises.find(({ name }) => name === 'squat') ?? null;
    expect(squat).not.toBeNull();
    expect(findOthers('When benching alone leave the collars off.', squat)).toEqual(['bench']);
    expect(findOthers('published for the bench press', squat)).toContain('bench press');
    expect(findOthers('for the pectoralis major', squat)).toEqual(['pectoralis major']);
    expect(findOthers('Squatting to the quadriceps, squats.', squat)).toEqual([]);
  });

  it('leaves the page its source: there the stand-in is named', () => {
    state.change({ exercise: 'squat', load: 75 });
    const possible = state.possible.value;
    expect(possible && statePossibleInFull(possible)).toMatch(/published for the bench press, which stands in here/u);
  });
});
