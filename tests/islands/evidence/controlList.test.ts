/** The controls of the Evidence page as data, and the words of its guided steps. */
import { describe, expect, it } from 'vitest';
import { listVocabulary } from '../../../src/islands/analysis/filterOptions.ts';
import { optionsWith, SETTING_CONTROLS } from '../../../src/islands/evidence/controlList.ts';
import { limitYears, listFilters, tickedWords, toggleFilter } from '../../../src/islands/evidence/filters.ts';
import { defaultSettings, type Settings, settingsSchema, wordsOfSetting } from '../../../src/model/settings.ts';
import { makeArms } from '../../support/tables.ts';

const arms = makeArms([{}, { study: 'Wren 2020', year: '2020', sex: 'female' }, { study: 'Rail 2021', sex: 'male' }]);
const { options, years } = listVocabulary(arms);

describe('a filter', () => {
  const filter = listFilters(options).find(({ key }) => key === 'sex');
  if (!filter) throw new Error('no filter of sex');

  it('shows all of its words ticked where none is chosen, and keeps what is left of them', () => {
    expect(tickedWords(filter, defaultSettings)).toEqual(['female', 'male']);
    const without = toggleFilter(filter, 'female')(defaultSettings);
    expect(without.include.sex).toEqual(['male']);
    expect(toggleFilter(filter, 'female')(without).include.sex).toEqual([]);
  });

  it('keeps its last word, since an empty list would keep every row', () => {
    const one = toggleFilter(filter, 'female')(defaultSettings);
    expect(toggleFilter(filter, 'male')(one)).toEqual(one);
  });

  it('of years has no limit at the table’s own ends', () => {
    const { high } = years;
    expect(limitYears('yearTo', high - 1, years)(defaultSettings).include.yearTo).toBe(high - 1);
    expect(limitYears('yearTo', high, years)(defaultSettings).include.yearTo).toBeNull();
  });
});

it('every control says what its setting does, and then what usually happens', () => {
  const spoken = SETTING_CONTROLS.filter(({ id }) => id !== 'separate');
  expect(spoken.length).toBeGreaterThan(8);
  for (const { help } of spoken) expect(help).toMatch(/^[A-Z].*\. [A-Z].*\.$/u);
  for (const key of Object.keys(defaultSettings)) expect(wordsOfSetting(key as keyof Settings)).toMatch(/^[A-Z].*\.$/u);
});

describe('a setting that an address gave', () => {
  const control = (id: string) => {
    const found = SETTING_CONTROLS.find((one) => one.id === id);
    if (!found) throw new Error(`no control ${id}`);
    return found;
  };

  it('is shown as exact as it is', () => {
    const settings = settingsSchema.parse({ keptShare: 0.925, confidence: 0.999 });
    expect(control('keep').read(settings)).toBe(92.5);
    expect(control('level').read(settings)).toBe(99.9);
  });

  it('is among the options even where it is none of the usual ones', () => {
    const adjust = control('adjust');
    if (adjust.kind !== 'choice') throw new Error('not a choice');
    const value = adjust.read(settingsSchema.parse({ adjust: ['weeks', 'load'] }));
    expect(optionsWith(adjust.options, value).at(-1)).toEqual({ value: 'load,weeks', label: 'load and weeks' });
    expect(optionsWith(adjust.options, 'load')).toBe(adjust.options);
  });
});
