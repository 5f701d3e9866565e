/** The address that cites a figure: one for the same settings, read back to what was written, and never more than numbers. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { listFigures } from '../../src/figures/catalogue.ts';
import { headlineOf, readHeadline, stateFound, writeHeadline } from '../../src/figures/citing/headline.ts';
import { changedSince, markOf, orderSettings, readCited, writeCited } from '../../src/islands/figure/citedAddress.ts';
import { defaultSettings, settingsSchema } from '../../src/model/settings.ts';
import { anySettings } from '../support/settingsArbitrary.ts';
import { makeEvidence, shippedArms } from '../support/shippedFigures.ts';

const VERSION = 'ba6d2a5e';
const some = settingsSchema.parse({ curve: 'log', split: 50 });

describe('the mark of settings', () => {
  it('is none for the site’s own, and ten hexadecimal characters for all others', () => {
    expect(markOf(defaultSettings)).toBeNull();
    expect(markOf(some)).toMatch(/^[\da-f]{10}$/u);
  });

  it('is the same whatever the order in which words were chosen, and whichever version the address is of', () => {
    const one = settingsSchema.parse({ adjust: ['weeks', 'load'], include: { muscle: ['b', 'a', 'b'] } });
    const other = settingsSchema.parse({ adjust: ['load', 'weeks'], include: { muscle: ['a', 'b'] } });
    expect(markOf(one)).toBe(markOf(other));
    expect(writeCited(one, { version: VERSION, own: false, found: null })).toBe(
      writeCited(other, { version: VERSION, own: false, found: null }),
    );
    expect(markOf(readCited('?v=1&split=50', '').settings)).toBe(
      markOf(readCited('?v=2&split=50&curve=line', '').settings),
    );
  });

  it('stays what it is: it stands in the names of files that were saved', () => {
    // SHA-256 of "?v=2&curve=log&split=50", by sha256sum (GNU coreutils).
    expect(markOf(some)).toBe('b17be216bf');
  });

  it('is another for every other of 500 settings', () => {
    const sample = fc.sample(anySettings(shippedArms), { seed: 9, numRuns: 500 }).map(orderSettings);
    const different = new Set(sample.map((settings) => JSON.stringify(settings)));
    expect(different.size).toBeGreaterThan(450);
    expect(new Set(sample.map(markOf)).size).toBe(different.size);
  });
});

describe('an address that cites a figure', () => {
  it('is read back to the settings, the version and what was found', () => {
    fc.assert(
      fc.property(anySettings(shippedArms), fc.boolean(), (settings, own) => {
        const strength = { point: -0.4, low: -2.1, high: 1.3 };
        const found = { targets: [], strength, rows: 36, studies: 9, counts: null };
        const read = readCited(writeCited(settings, { version: VERSION, own, found }), 'strength');
        expect(read).toEqual({
          settings: orderSettings(settings),
          pin: { version: VERSION, own, found },
          notice: null,
          lastingNotice: null,
        });
      }),
      { seed: 3, numRuns: 100 },
    );
  });

  it('has for every figure numbers that read back, and words for them', () => {
    const evidence = makeEvidence(shippedArms, { swept: true });
    const { figures } = listFigures(evidence);
    expect(figures.length).toBeGreaterThan(15);
    for (const { slug } of figures) {
      const found = headlineOf(slug, evidence);
      expect(readHeadline(writeHeadline(found)), slug).toEqual(found);
      expect(writeHeadline(found)).toMatch(/^[a-z\d._*-]{1,60}$/u);
      expect(stateFound(slug, found, 'log-ratio'), slug).toMatch(slug === 'evidence-map' ? /\d arms of/u : /\d row/u);
    }
    expect(stateFound('growth-heavy', headlineOf('growth-heavy', evidence), 'log-ratio')).toBe(
      'heavy loads: target 3.2 (1.6 to 4.2) in reserve; 72 rows of 17 studies',
    );
    expect(stateFound('strength', headlineOf('strength', evidence), 'log-ratio')).toMatch(
      /^5 more in reserve change strength by [−\d.]+\u00a0% \([−\d.]+ to [−\d.]+\); \d+ rows of \d+ studies$/u,
    );
  });

  it('is refused the numbers of a figure of other things than the one it names, and says so', () => {
    const evidence = makeEvidence(shippedArms, { swept: true });
    const slugs = listFigures(evidence).figures.map(({ slug }) => slug);
    const kindOf = (slug: string) =>
      ['light', 'heavy', 'targets', 'strength'].find((kind) => slug.endsWith(kind)) ?? slug;
    let refused = 0;
    for (const slug of slugs) {
      for (const other of slugs) {
        const found = headlineOf(slug, evidence);
        const read = readCited(writeCited(some, { version: VERSION, own: false, found }), other);
        const isSame = kindOf(slug) === kindOf(other);
        expect(read.pin?.found, `${slug} as ${other}`).toEqual(isSame ? found : null);
        if (isSame) continue;
        refused++;
        expect(read.notice).toMatch(/is of another figure than the one that it names/u);
      }
    }
    expect(refused).toBeGreaterThan(100);
    // Nor is it told of the figure that stands there because the address names none.
    expect(readCited(`?v=2&table=${VERSION}&then=l1_0_2*n3_1`, '').pin?.found).toBeNull();
    expect(readCited(`?v=2&table=${VERSION}&then=h1_0_2*n3_1`, 'growth-light').pin?.found).toBeNull();
    for (const then of ['h1_0_2*m3_1', 'm3', 't3_1'])
      expect(readCited(`?v=2&table=${VERSION}&then=${then}`, 'evidence-map').pin?.found, then).toBeNull();
  });

  it('has its own numbers told of every figure of a small or one-sided table', () => {
    const studies = [...new Set(shippedArms.map(({ study }) => study))];
    const outcomes = [...new Set(shippedArms.map(({ outcome }) => outcome))];
    const seen = new Set<string>();
    fc.assert(
      fc.property(
        fc.subarray(studies, { minLength: 1 }),
        fc.subarray(outcomes, { minLength: 1 }),
        fc.constantFrom([0, 50], [0, 100], [40, 100], [60, 100]),
        (kept, of, [least, most]) => {
          const arms = shippedArms.filter(({ study, outcome, load_pct_1rm }) => {
            const load = load_pct_1rm ?? 0;
            return kept.includes(study) && of.includes(outcome) && load >= least && load <= most;
          });
          if (arms.length === 0) return;
          const evidence = makeEvidence(arms);
          for (const { slug } of listFigures(evidence).figures) {
            seen.add(slug);
            const found = headlineOf(slug, evidence);
            const read = readCited(writeCited(some, { version: VERSION, own: false, found }), slug);
            expect(read.pin?.found, slug).toEqual(found);
            expect(read.notice).toBeNull();
          }
        },
      ),
      { seed: 9, numRuns: 30 },
    );
    expect(seen.size).toBeGreaterThan(15);
  });

  it('has its own numbers told of every figure that all loads together have, other choices too', () => {
    const settings = settingsSchema.parse({ split: null, curve: 'log' });
    const evidence = {
      ...makeEvidence(shippedArms, { settings }),
      sweep: makeEvidence(shippedArms, { swept: true }).sweep,
    };
    const slugs = listFigures(evidence).figures.map(({ slug }) => slug);
    expect(slugs).toEqual(expect.arrayContaining(['growth-all', 'robustness-light', 'robustness-heavy', 'targets']));
    for (const slug of slugs) {
      const found = headlineOf(slug, evidence);
      const read = readCited(writeCited(settings, { version: VERSION, own: false, found }), slug);
      expect(read, slug).toMatchObject({ pin: { found }, notice: null });
    }
  });

  it('says of what was found no more than it knows, and what of it stays true of another figure', () => {
    const lost = readCited(`?v=2&table=${VERSION}&then=l1_0_2*n3_1`, '');
    expect(lost).toMatchObject({ pin: { found: null }, notice: null, lastingNotice: null });
    const other = readCited(`?v=2&curve=LOG&table=${VERSION}&then=h1_0_2*n3_1`, 'growth-light');
    expect(other.notice).toMatch(/defaults: curve\. What the address says was found is of another figure/u);
    expect(other.lastingNotice).toMatch(/defaults: curve\.$/u);
  });

  it('tells a table that changed from another finding in the same table', () => {
    const evidence = makeEvidence(shippedArms);
    for (const slug of ['growth-light', 'targets', 'strength', 'evidence-map', 'recovery-trained', 'beyond-failure']) {
      const now = headlineOf(slug, evidence);
      const pin = { version: VERSION, own: false, found: readHeadline(writeHeadline(now)) };
      expect(changedSince(pin, VERSION, now), slug).toBeNull();
      expect(changedSince({ ...pin, found: null }, VERSION, now), slug).toBeNull();
      expect(changedSince(pin, '0123abcd', now), slug).toBe('table');
      expect(changedSince({ ...pin, found: { ...now, rows: now.rows + 1 } }, VERSION, now), slug).toBe('finding');
      // As it was written before the map and the figures of recovery had letters of their own.
      expect(changedSince({ ...pin, found: { ...now, counts: null } }, VERSION, now), slug).toBeNull();
    }
  });

  it('reads addresses from before counts had letters of their own', () => {
    for (const slug of ['evidence-map', 'recovery-trained', 'recovery-untrained'])
      expect(readCited(`?v=2&table=${VERSION}&then=n31_12`, slug).pin?.found).toMatchObject({ rows: 31, studies: 12 });
  });

  it('tells a target without an upper end from one without any', () => {
    const found = {
      targets: [
        { band: 'light', shown: { point: 2, low: 0.5, high: null } },
        { band: 'heavy', shown: null },
      ],
      strength: null,
      rows: 12,
      studies: null,
      counts: null,
    } as const;
    expect(writeHeadline(found)).toBe('l2_0.5_*h*n12');
    expect(readHeadline('l2_0.5_*h*n12')).toEqual(found);
    expect(stateFound('targets', found, 'log-ratio')).toMatch(
      /light loads: target 2\.0 \(at least 0\.5\).*heavy loads: no target/u,
    );
  });

  it('holds numbers only: no words of an address ever reach the page', () => {
    fc.assert(
      fc.property(fc.string(), fc.string(), (table, then) => {
        const { pin, notice } = readCited(`?${new URLSearchParams({ v: '2', table, then })}`, 'growth-light');
        if (pin?.found) expect(writeHeadline(pin.found)).not.toMatch(/[b-gi-kopqrv-z]/u);
        else expect(notice).toMatch(/could not be read/u);
      }),
      { seed: 5, numRuns: 500 },
    );
    for (const wrong of [
      '',
      'n',
      'n1_2_3',
      'l1*n3',
      'l1_2_3',
      'n3*x',
      'n1e9',
      'n-3',
      'n2.5',
      'l1_2_3*n<b>',
      's1_2*n3',
      'n99999999',
      'l1_0_2*l1_0_2*n3',
      'n3*n4',
      'n3*m4_1',
      'm',
      't-3_1',
      // Numbers that no figure has: ends not about their target, a reserve below 0, studies without rows.
      'l-5_-6_2*n9_3',
      'l1_2_3*n9_3',
      'h3_1_2*n9_3',
      's1_2_3*n9_3',
      'n1_5',
    ])
      expect(readHeadline(wrong), wrong).toBeNull();
  });

  it('with a version that is none, or numbers that are none, says so and shows the figure', () => {
    expect(readCited('?v=2&curve=log&table=<b>', '').notice).toMatch(/names a version of the table that is none/u);
    expect(readCited('?v=2&curve=log&table=<b>', '')).toMatchObject({ pin: null, settings: { curve: 'log' } });
    expect(readCited(`?v=2&table=${VERSION}&then=x`, 'growth-light')).toMatchObject({
      pin: { version: VERSION, own: false, found: null },
      notice: 'What was found when this was cited could not be read from the address.',
    });
    expect(readCited('?v=1&curve=log', '').settings.curve).toBe('log');
    // The version of the site's table is always known, so no table was ever cited as one that is not.
    for (const table of ['unknown', 'unhashed-0123abcd', 'own-', 'own-own-0123abcd', '0123abcd-'])
      expect(readCited(`?v=2&table=${table}`, 'growth-light'), table).toMatchObject({
        pin: null,
        notice: expect.stringMatching(/names a version of the table that is none/u),
      });
  });
});
