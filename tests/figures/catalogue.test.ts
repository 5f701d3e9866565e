/**
 * The catalogue of figures. What is proven: the shipped table makes every figure, other analyses leave
 * figures out with a reason instead of breaking; every number in a title, caption or text alternative is
 * a number of the JSON that is downloaded with the figure, rounded.
 */
import { describe, expect, it } from 'vitest';
import { LISTED_FIGURES, listFigures } from '../../src/figures/catalogue.ts';
import { writeFigureJson } from '../../src/figures/figureFiles.ts';
import { formatNumber } from '../../src/figures/format.ts';
import { settingsSchema } from '../../src/model/settings.ts';
import { drawPlot } from '../../src/site/drawFigure.ts';
import { failOnWarnings } from '../support/failOnWarnings.ts';
import { settleSvg } from '../support/settleSvg.ts';
import { makeEvidence, shippedArms } from '../support/shippedFigures.ts';

const evidence = makeEvidence(shippedArms, { swept: true });
const { figures, missing } = listFigures(evidence);
const context = {
  dataVersion: '0a1b2c3d',
  demonstration: true,
  settings: evidence.analysis.settings,
  address: '/figures/x/',
  mark: null,
};

failOnWarnings();

describe('the figures', () => {
  it('of the shipped table are all but those of unsplit loads, under names that stay', () => {
    expect(figures.map(({ slug }) => slug)).toEqual([
      'growth-light',
      'growth-heavy',
      'new-study-light',
      'new-study-heavy',
      'targets',
      'strength',
      'recovery-untrained',
      'recovery-trained',
      'beyond-failure',
      'forest-light',
      'forest-heavy',
      'influence-light',
      'influence-heavy',
      'small-studies-light',
      'small-studies-heavy',
      'by-year-light',
      'by-year-heavy',
      'evidence-map',
      'robustness-light',
      'robustness-heavy',
    ]);
    expect(missing.map(({ slug }) => slug)).toEqual(
      ['growth', 'new-study', 'forest', 'influence', 'small-studies', 'by-year'].map((stem) => `${stem}-all`),
    );
    for (const { reason } of missing) expect(reason).toBe('the analysis splits loads at 60\u00a0% of 1RM');
  });

  it('speak of a split, and of a fit that could not be made, as they are', () => {
    const targetsWith = (settings: Parameters<typeof settingsSchema.parse>[0], arms = shippedArms) =>
      listFigures(makeEvidence(arms, { settings: settingsSchema.parse(settings) }), 'targets').figures[0];
    expect(targetsWith({}).shown).toMatch(
      /near the split between light and heavy the fit of all loads together answers\.$/u,
    );
    expect(targetsWith({ split: null }).shown).toMatch(/^The targets of growth from \d+ rows\.$/u);
    const few = targetsWith({ include: { trainingStatus: ['trained'], yearFrom: 2010 }, keptShare: 0.5 });
    expect(few.figure.caption).toMatch(/none for below 10 possible, since study \w+ \d{4} alone decides/u);
  });

  it.each([
    ['all loads as one', shippedArms, { split: null }],
    ['no row of fatigue or strength', shippedArms.filter(({ outcome }) => outcome === 'growth'), {}],
    ['one study', shippedArms.filter(({ study }) => study === shippedArms[0].study), {}],
    ['no row', [], {}],
    ['baseline SDs and a spline', shippedArms, { metric: 'standardised', curve: 'spline' }],
    ['strength as outcome', shippedArms, { outcome: 'strength' }],
    ['equal weights and a confidence of 0.5', shippedArms, { weighting: 'equal', confidence: 0.5 }],
  ] as const)('of %s are each drawn or left out with a reason', (_what, arms, changes) => {
    const made = listFigures(makeEvidence(arms, { settings: settingsSchema.parse(changes) }));
    expect([...made.figures, ...made.missing].map(({ slug }) => slug).sort()).toEqual(
      LISTED_FIGURES.map(({ slug }) => slug).sort(),
    );
    for (const { reason } of made.missing) expect(reason).toMatch(/^\S.{9,}[^.]$/su);
    for (const { figure } of made.figures) {
      expect(drawPlot(figure)).toMatch(/^<svg/u);
      for (const words of [figure.title, figure.caption, figure.alternative])
        expect(words).not.toMatch(/undefined|NaN|null|Infinity/u);
    }
  });

  it('of all loads as one name them and leave those of light and heavy out', () => {
    const made = listFigures(makeEvidence(shippedArms, { settings: settingsSchema.parse({ split: null }) }));
    expect(made.figures.map(({ slug }) => slug)).toContain('growth-all');
    expect(made.missing.find(({ slug }) => slug === 'growth-light')?.reason).toBe(
      'the analysis fits all loads together',
    );
  });

  it('can be asked for one by one', () => {
    const one = listFigures(evidence, 'strength');
    expect(one.figures.map(({ slug }) => slug)).toEqual(['strength']);
    expect(one.missing).toEqual([]);
  });

  it.each(['targets', 'strength', 'beyond-failure', 'robustness-heavy', 'influence-light', 'by-year-heavy'])(
    '%s is drawn as before',
    async (slug) => {
      const made = figures.find((one) => one.slug === slug);
      if (!made) throw new Error(`expected a figure: ${slug}`);
      await expect(settleSvg(drawPlot(made.figure))).toMatchFileSnapshot(`${slug}.svg`);
    },
  );
});

describe('titles say no more than the interval', () => {
  it('of strength: what is inside the margin is not called an effect', () => {
    const title = (worth: number) =>
      listFigures(
        makeEvidence(shippedArms, { settings: settingsSchema.parse({ smallestWorthwhile: { 'log-ratio': worth } }) }),
        'strength',
      ).figures[0].figure.title;
    expect(title(2)).toBe('Strength: 5 more in reserve change it by less than is worth having');
    expect(title(0.1)).toBe('Strength: an effect of reserve is neither shown nor ruled out');
  });

  it('of work beyond failure: an interval that holds 0 is no difference', () => {
    const { analysis } = evidence;
    const open = analysis.beyondFailure.filter(
      ({ difference }) => difference && difference.ciLow < 0 && difference.ciHigh > 0,
    );
    expect(open.map(({ kind }) => kind)).toEqual(['load-drops']);
    const title = (beyondFailure: typeof open) =>
      listFigures({ ...evidence, analysis: { ...analysis, beyondFailure } }, 'beyond-failure').figures[0].figure.title;
    expect(title(open)).toMatch(/distinguishable from none$/u);
    expect(title([...analysis.beyondFailure])).not.toMatch(/distinguishable from none$/u);
  });
});

describe('every number in the words of', () => {
  it.each(figures)('$slug is in the JSON that goes with it', (made) => {
    const { analysis, table } = JSON.parse(writeFigureJson(made, context));
    const trace = tracer(analysis, table);
    const { title, caption, alternative } = made.figure;
    for (const words of [title, caption, alternative]) {
      const found = readNumbers(withoutNames(words));
      for (const number of found) {
        expect(trace(number), `${number} in “${words}”`).toBe(true);
      }
    }
    // The growth figures alone have seven; a figure whose words hold none would prove nothing.
    expect(readNumbers(alternative).length).toBeGreaterThan(0);
  });

  it('wrong numbers would be caught, most of them one by one', () => {
    let tried = 0;
    let passed = 0;
    for (const made of figures) {
      const { analysis, table } = JSON.parse(writeFigureJson(made, context));
      const trace = tracer(analysis, table);
      for (const number of readNumbers(withoutNames(made.figure.caption))) {
        for (const other of '0123456789') {
          const wrong = `${number.slice(0, -1)}${other}`;
          if (wrong === number) continue;
          tried++;
          if (trace(wrong)) passed++;
        }
      }
    }
    expect(tried).toBeGreaterThan(500);
    // Some wrong numbers stand for something else: a digit is in every list of counts.
    expect(passed / tried).toBeLessThan(0.35);
  });

  it('the main ones are those of the analysis', () => {
    const captionOf = (slug: string) => figures.find((one) => one.slug === slug)?.figure.caption ?? '';
    const { bands, strength, fatigue } = evidence.analysis;
    if ('all' in bands || !evidence.sweep) throw new Error('expected two bands and a sweep');
    for (const name of ['light', 'heavy'] as const) {
      const { point, low, high } = bands[name].target.shown ?? { point: Number.NaN, low: Number.NaN, high: null };
      expect(captionOf(`growth-${name}`)).toContain(
        `${point?.toFixed(1)} in reserve keep 90\u00a0% of it (${low?.toFixed(1)} to ${high?.toFixed(1)})`,
      );
      const { quantiles } = evidence.sweep[name];
      expect(captionOf(`robustness-${name}`)).toContain(
        `lie from ${quantiles[0].toFixed(1)} to ${quantiles[4].toFixed(1)}`,
      );
    }
    const { point, low, high } = bands.light.target.shown ?? { point: Number.NaN, low: Number.NaN, high: null };
    expect(captionOf('targets')).toContain(
      `${point?.toFixed(1)} (${low?.toFixed(1)} to ${high?.toFixed(1)}) for above 20 possible`,
    );
    expect(captionOf('strength')).toContain(
      `${(100 * Math.expm1(strength.equivalence?.difference.estimate ?? 0)).toFixed(1).replace('-', '−')}\u00a0%`,
    );
    expect(captionOf('recovery-trained')).toContain(`${Math.ceil(fatigue.byStatus[1].recovery[0].hours)} hours`);
  });
});

/** Study names hold a year, “1RM” and names of loads a number that is no finding. */
function withoutNames(words: string): string {
  return words.replace(/\b1RM\b/gu, '').replace(/\b[A-Z][a-z]+ (?:19|20)\d\d\b/gu, '');
}

/** Numbers in words; the commas between thousands are no part of them. */
function readNumbers(words: string): string[] {
  return words.replaceAll(/(?<=\d),(?=\d{3}\b)/gu, '').match(/−?\d+(?:\.\d+)?/gu) ?? [];
}

/** Whether a number in words is one of the analysis, or of the table where that is short, as it is shown. */
function tracer(
  analysis: Parameters<typeof countsOf>[0],
  table: { readonly rows: readonly (readonly (string | number)[])[] },
): (text: string) => boolean {
  // Hours of recovery and their limits are told up to the next whole one, all others to the nearest digit.
  const isOfRecovery = 'fatigue' in analysis;
  const isTime = ({ key }: Found) => isOfRecovery && ['hours', 'low', 'high'].includes(key);
  const all = numbersOf(analysis);
  const known = all.filter((one) => !isTime(one));
  const hours = new Set(all.filter(isTime).map(({ value }) => String(Math.ceil(value))));
  const counts = countsOf(analysis);
  const rows = table.rows.length <= SHORT ? table.rows : [];
  const cells = new Set(rows.flat().flatMap((cell) => readNumbers(String(cell))));
  return (text) => cells.has(text) || counts.has(text) || hours.has(text) || isRounded(text, known);
}

/** Rows of a table in which a number is not found by chance. */
const SHORT = 4;
/** Long lists of points that are drawn and that no words are about. */
const DRAWN_ONLY = new Set([
  'fitted',
  'curvePoints',
  'curve',
  'curves',
  'rows',
  'places',
  'cells',
  'coefficients',
  'seed',
  'assumedCorrelation',
]);

interface Found {
  /** Property that holds it; empty in a list. */
  readonly key: string;
  readonly value: number;
}

/** Every finite number of a JSON value, also those in its words; lists that are only drawn left out. */
function numbersOf(value: unknown, key = ''): Found[] {
  if (typeof value === 'number') return [{ key, value }];
  if (typeof value === 'string')
    return readNumbers(value).map((text) => ({ key: '', value: Number(text.replace('−', '-')) }));
  if (Array.isArray(value)) return value.flatMap((part) => numbersOf(part));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value)
    .filter(([name, part]) => !(DRAWN_ONLY.has(name) && typeof part === 'object'))
    .flatMap(([name, part]) => numbersOf(part, name));
}

/** How the figures show a number: an estimate also as per cent change (of ten points of load), a share in per cent. */
function showsOf({ key, value }: Found): readonly number[] {
  if (/^(?:estimate|ciLow|ciHigh|predictionLow|predictionHigh)$/u.test(key))
    return [value, 100 * Math.expm1(value), 100 * Math.expm1(10 * value)];
  if (/^(?:keptShare|confidence|share)$/u.test(key)) return [100 * value];
  return [value];
}

function isRounded(text: string, known: readonly Found[]): boolean {
  const digits = text.split('.')[1]?.length ?? 0;
  return known.flatMap(showsOf).some((value) => formatNumber(value, digits) === text);
}

/** Counts that the words give and the JSON has as lists: how many, and how many of them are of a kind. */
function countsOf(part: {
  deviations?: readonly { low: number; high: number }[];
  cumulative?: readonly { target: { point: number | null } }[];
  strength?: unknown;
  fatigue?: unknown;
  map?: { regions: readonly unknown[] };
  levels?: readonly unknown[];
}): ReadonlySet<string> {
  const { deviations = [], cumulative = [], map, fatigue } = part;
  const counts = [
    ...(deviations.length > 0
      ? [deviations.length, deviations.filter(({ low, high }) => low > 0 || high < 0).length]
      : []),
    ...(cumulative.length > 0
      ? [cumulative.length, cumulative.filter(({ target }) => target.point === null).length]
      : []),
    // The numbers under which the caption names the regions.
    ...(map?.regions.map((_, i) => i + 1) ?? []),
    // Fixed by the program, not found: repetitions and points that differences are stated for, df that are too few.
    ...('strength' in part ? [5, 10] : []),
    ...(fatigue ? [4] : []),
  ];
  return new Set(counts.map(String));
}
