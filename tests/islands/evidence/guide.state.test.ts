/**
 * The guide driven as a reader drives it, over many tables and settings with the engine's own fits: every step asks or
 * says why not, what it says are the numbers of its two analyses, nothing is stuck, and the end is where it began.
 */
import { readFileSync } from 'node:fs';
import { computed, effect, signal } from '@preact/signals';
import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { Arm } from '../../../src/evidence/schema.ts';
import { readArms } from '../../../src/evidence/table.ts';
import { formatTarget } from '../../../src/figures/format.ts';
import { stateMoved } from '../../../src/figures/moved.ts';
import { listVocabulary } from '../../../src/islands/analysis/filterOptions.ts';
import { writeSettings } from '../../../src/islands/analysis/settingsAddress.ts';
import { createGuide } from '../../../src/islands/evidence/guide.state.ts';
import { followedBand } from '../../../src/islands/evidence/guideRings.ts';
import { GUIDE_STEPS } from '../../../src/islands/evidence/guideSteps.ts';
import { analyse } from '../../../src/model/analyse.ts';
import { findBand } from '../../../src/model/bands.ts';
import { CURVES, type Settings, settingsSchema, WEIGHTINGS } from '../../../src/model/settings.ts';
import { pretendBrowser } from '../pretendBrowser.ts';

const { arms: shipped } = readArms(readFileSync('data/arms.csv', 'utf8'), 'arms.csv');
const growth = shipped.filter(({ outcome }) => outcome === 'growth');
const studies = [...new Set(growth.map(({ study }) => study))];

afterEach(() => vi.unstubAllGlobals());

function open(arms: readonly Arm[], from: Settings, storage: Record<string, string> | 'forbidden' | null = {}) {
  if (storage !== null) pretendBrowser('', storage);
  // The address that the page was opened by; the guide comes before what writes it.
  location.search = writeSettings(from);
  const settings = signal(from);
  const analysis = signal(analyse(arms, from));
  const fitting = {
    analysis,
    vocabulary: signal(listVocabulary(arms)),
    pending: computed(() => JSON.stringify(analysis.value.settings) !== JSON.stringify(settings.value)),
    problem: signal<string | null>(null),
  };
  const stopFitting = effect(() => {
    analysis.value = analyse(arms, settings.value);
  });
  const guide = createGuide('/data/arms.csv', settings, fitting, () => undefined);
  const disconnect = guide.connect();
  const close = () => {
    disconnect();
    stopFitting();
  };
  return { guide, settings, analysis, close };
}

const tables = fc
  .subarray(studies, { minLength: 1, maxLength: 14 })
  .map((kept) => growth.filter(({ study }) => kept.includes(study)));
const choices = fc
  .record({
    curve: fc.constantFrom(...CURVES),
    weighting: fc.constantFrom(...WEIGHTINGS),
    split: fc.constantFrom(null, 30, 60, 85),
    metric: fc.constantFrom('log-ratio', 'standardised'),
    keptShare: fc.constantFrom(0.8, 0.9, 0.95),
  })
  .map((part) => settingsSchema.parse(part));

describe('the guide', () => {
  it('asks or says why not at every step of any table, by the numbers of its analyses, and gives back what it began with', () => {
    let asked = 0;
    let passed = 0;
    fc.assert(
      fc.property(tables, choices, fc.constantFrom('less', 'same', 'more', ''), (arms, from, choice) => {
        const { guide, settings, analysis, close } = open(arms, from);
        guide.begin();
        GUIDE_STEPS.forEach((step, i) => {
          expect(guide.step.value).toBe(step);
          const before = guide.before.value;
          if (!before) throw new Error(`nothing to start from: ${step.title}`);
          expect(before.settings).toEqual(step.base(from));
          if (guide.whyNot.value !== null) {
            passed++;
            expect(guide.whyNot.value).toMatch(/^[A-Z].*\.$/su);
            expect(guide.findings.value[i]).toMatchObject({ wasAsked: false, brief: guide.whyNot.value });
          } else {
            asked++;
            expect(guide.findings.value[i]).toBeNull();
            expect(guide.ringed.value?.spots.length, step.title).toBeGreaterThan(0);
            guide.choose(choice);
            const after = analysis.value;
            expect(after.settings).not.toEqual(before.settings);
            const found = guide.findings.value[i];
            expect(found?.came).toBe(stateMoved(before, after));
            const followed = followedBand(before);
            const now = followed && findBand(after.bands, followed.name);
            if (!followed) throw new Error('asked without a target to follow');
            expect(found?.brief).toContain(`target ${formatTarget(followed.band.target)}`);
            if (now) expect(found?.brief).toContain(`then ${formatTarget(now.target)}.`);
            if (now && now.target.point !== null)
              expect(found?.moved).toBe(now.target.point - (followed.band.target.point ?? Number.NaN));
          }
          guide.goTo(i + 1);
        });
        expect(guide.step.value).toBeNull();
        expect(guide.progress.value?.step).toBe(GUIDE_STEPS.length);
        guide.goTo(3);
        guide.leave();
        expect(settings.value).toEqual(from);
        expect(guide.progress.value).toBeNull();
        close();
      }),
      { seed: 3, numRuns: 12 },
    );
    expect(asked).toBeGreaterThan(20);
    expect(passed).toBeGreaterThan(20);
  });

  const from = settingsSchema.parse({ split: 55 });
  const STORE = 'shy-of-failure guide /data/arms.csv';

  it('makes way for a link that asks for other settings, and goes on at a plain address', () => {
    const first = open(growth, from);
    first.guide.begin();
    first.close();
    const plain = open(growth, settingsSchema.parse({}), null);
    expect(plain.guide.progress.value?.step).toBe(0);
    plain.close();
    const asked = settingsSchema.parse({ curve: 'quadratic', split: 55 });
    const linked = open(growth, asked, null);
    expect(linked.guide.progress.value).toBeNull();
    expect(linked.settings.value).toEqual(asked);
    linked.close();
    expect(sessionStorage.getItem(STORE)).toBeNull();
  });

  it('survives a reload at an answered step, with its finding, and at one that is not answered', () => {
    const first = open(growth, from);
    first.guide.begin();
    first.guide.choose('less');
    const found = first.guide.findings.value[0];
    const answered = first.settings.value;
    first.close();
    // The address brings the settings back.
    const again = open(growth, answered, null);
    expect(again.guide.progress.value).toMatchObject({ step: 0, guesses: { 0: 'less' }, start: writeSettings(from) });
    expect(again.guide.findings.value[0]).toEqual(found);
    expect(again.settings.value).toEqual(answered);
    expect(again.guide.ringed.value?.spots).toHaveLength(1);
    again.guide.goTo(1);
    again.close();
    const third = open(growth, again.settings.value, null);
    expect([third.guide.progress.value?.step, third.guide.guess.value]).toEqual([1, null]);
    expect(third.guide.ringed.value?.spots).toHaveLength(1);
    third.guide.leave();
    expect(third.settings.value).toEqual(from);
    third.close();
    expect(sessionStorage.getItem(STORE)).toBeNull();
  });

  it('survives a reload that comes before the address was written', () => {
    const first = open(growth, from);
    first.guide.begin();
    first.guide.choose('less');
    const [progress, shown] = [first.guide.progress.value, first.settings.value];
    expect(shown).not.toEqual(from);
    first.close();
    const again = open(growth, from, null);
    expect(again.settings.value).toEqual(shown);
    expect(again.guide.progress.value).toMatchObject(progress ?? {});
    expect(again.guide.findings.value).toEqual(first.guide.findings.value);
    again.close();
  });

  it('still says after a reload, and going back, what an answered step asked, whatever is fitted by then', () => {
    const start = settingsSchema.parse({ split: 80, curve: 'log' });
    const first = open(growth, start);
    first.guide.begin();
    for (const title of ['Straighten or bend', 'Move the split']) {
      const place = GUIDE_STEPS.findIndex((step) => step.title === title);
      first.guide.goTo(place);
      const asked = first.guide.question.value;
      expect(asked).toMatch(title === 'Move the split' ? /from heavy to light/u : /the place of the logarithm/u);
      first.guide.choose('same');
      expect(first.guide.question.value).toBe(asked);
      const reloaded = open(growth, first.settings.value, null);
      expect(reloaded.guide.before.value).toBeNull();
      expect(reloaded.guide.question.value).toBe(asked);
      expect(reloaded.guide.findings.value).toEqual(first.guide.findings.value);
      reloaded.close();
      first.guide.goTo(0);
      first.guide.goTo(place);
      expect(first.guide.question.value).toBe(asked);
    }
    first.close();
  });

  it('asks anew what it keeps no question of', () => {
    const first = open(growth, from);
    first.guide.begin();
    first.guide.choose('less');
    const whole = first.guide.findings.value[0];
    const kept = JSON.parse(sessionStorage.getItem(STORE) ?? '');
    const answered = first.settings.value;
    first.close();
    const { question: _, ...former } = kept.found[0];
    const again = open(growth, answered, { [STORE]: JSON.stringify({ ...kept, found: { 0: former } }) });
    expect(again.guide.findings.value[0]).toEqual(whole);
    expect(again.settings.value).toEqual(answered);
    again.close();
  });

  it('begins at the settings of the address where the reader was quicker than the page', () => {
    pretendBrowser();
    const settings = signal(settingsSchema.parse({}));
    const analysis = signal(analyse(growth, settings.value));
    const fitting = {
      analysis,
      vocabulary: signal(listVocabulary(growth)),
      pending: signal(true),
      problem: signal<string | null>(null),
    };
    const guide = createGuide('/data/arms.csv', settings, fitting, () => undefined);
    guide.begin();
    expect(guide.progress.value).toBeNull();
    settings.value = from;
    const disconnect = guide.connect();
    expect(guide.progress.value).toMatchObject({ step: 0, start: writeSettings(from) });
    disconnect();
  });

  it('begins again from its own start, without guesses', () => {
    const { guide, settings, close } = open(growth, from);
    guide.begin();
    guide.choose('');
    guide.goTo(1);
    guide.again();
    expect(guide.progress.value).toMatchObject({ step: 0, guesses: {}, found: {}, start: writeSettings(from) });
    expect(settings.value).toEqual(GUIDE_STEPS[0].base(from));
    close();
  });

  it('is another on another table, and none after nonsense or in a browser that keeps nothing', () => {
    for (const text of ['{', '[]', '{"step":-1}', '{"step":99,"guesses":{},"start":"","found":{}}']) {
      const { guide, close } = open(growth, from, { [STORE]: text });
      expect(guide.progress.value, text).toBeNull();
      close();
    }
    const other = open(growth, from, { 'shy-of-failure guide own:1': '{"step":1,"guesses":{},"start":"","found":{}}' });
    expect(other.guide.progress.value).toBeNull();
    other.close();
    const { guide, close } = open(growth, from, 'forbidden');
    guide.begin();
    guide.choose('');
    expect(guide.findings.value[0]?.wasAsked).toBe(true);
    close();
  });
});
