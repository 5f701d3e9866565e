/** The loads below what a lifter can lift once, as sentences that each end once. */
import { expect, it } from 'vitest';
import { sayLoads } from '../../../../src/islands/programme/lifters/sayLoads.ts';
import { lifterWith, listOf } from '../../../practice/lifters/people.ts';
import { exercises } from '../../../practice/programme/shipped.ts';

const say = (loads: readonly string[], maxima: Readonly<Record<string, string>> = { squat: '140' }) => {
  const { lines } = listOf([...loads.map((load) => ({ load })), { exercise: 'leg press', load: '33' }]);
  return sayLoads(lines, lifterWith(maxima), 'squat', exercises).replaceAll('\u00a0', ' ');
};

it('each load stands once, of this exercise alone, and says how it was rounded', () => {
  expect(say(['78', '80', '78'])).toBe(
    '107.5 kg for 78 %, rounded down to 76.8 %; 110 kg for 80 %, rounded down to 78.6 %.',
  );
  expect(say(['50'])).toBe('70 kg for 50 %.');
  expect(say(['70-75'])).toBe('97.5 to 105 kg for at most 75 %.');
});

it('what has to be known of several loads is said once, after them', () => {
  expect(say(['75', '80'], {})).toBe('75 % of 1RM, 80 % of 1RM: no 1RM of squat given.');
  expect(say(['75'], {})).toBe('75 % of 1RM: no 1RM of squat given.');
  expect(say(['75', '80'], { squat: 'abc' })).toBe('75 % of 1RM, 80 % of 1RM: the 1RM of squat cannot be read.');
});

it('loads that are plain stand before those that are not, whatever their order', () => {
  expect(say(['150 kg', '50', '1', 'heavy'])).toBe(
    '70 kg for 50 %. 150 kg: above the 1RM of 140 kg: no set can be advised. 1 % of 1RM: that is 1.4 kg, less than the smallest step of 2.5 kg. heavy: the load cannot be read.',
  );
});

it('no two sentences are joined by more than a space', () => {
  for (const loads of [
    ['75', '80'],
    ['150 kg', '75'],
    ['', '75', 'x'],
    ['1', '1.5'],
  ]) {
    for (const maxima of [{}, { squat: '140' }, { squat: 'abc' }]) {
      const said = say(loads, maxima);
      expect(said).toMatch(/[^.]\.$/u);
      expect(said).not.toMatch(/[.;:][.;:]/u);
    }
  }
});

it('speaks to the coach, whatever the load', () => {
  const { lines } = listOf([
    { load: '150 kg' },
    { load: 'heavy' },
    { load: '' },
    { load: '', possible: '12' },
    { load: '1' },
    { load: '80' },
  ]);
  for (const maxima of [{}, { squat: '140' }, { squat: 'abc' }] as const) {
    expect(sayLoads(lines, lifterWith(maxima), 'squat', exercises)).not.toMatch(/you|ask/iu);
  }
});
