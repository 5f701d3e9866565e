/** The address of the Evidence page: what it shows, elsewhere and again. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readView, writeView } from '../../../src/islands/evidence/evidenceAddress.ts';
import { CURVES, defaultSettings } from '../../../src/model/settings.ts';

const settings = fc
  .record({
    curve: fc.constantFrom(...CURVES),
    split: fc.constantFrom(null, 45, 60),
    muscle: fc.constantFrom<string[]>([], ['a&b=c', 'pin=1']),
  })
  .map(({ muscle, ...rest }) => ({ ...defaultSettings, ...rest, include: { ...defaultSettings.include, muscle } }));

describe('the address of Evidence', () => {
  it('shows elsewhere what it was written of', () => {
    fc.assert(
      fc.property(fc.record({ settings, pinned: fc.option(settings), showsNewStudy: fc.boolean() }), (view) => {
        expect(readView(writeView(view))).toEqual({ ...view, notice: null });
      }),
    );
  });

  it('is that of the settings alone where nothing stands beside them', () => {
    expect(writeView({ settings: defaultSettings, pinned: null, showsNewStudy: false })).toBe('');
    expect(writeView({ settings: defaultSettings, pinned: defaultSettings, showsNewStudy: true })).toBe(
      '?v=2&pin=v%3D2&new=shown',
    );
  });

  it('of the first version keeps the curve that was the default then, pinned too', () => {
    const view = readView('?v=2&pin=v%3D1%26split%3D50');
    expect([view.settings.curve, view.pinned?.curve, view.pinned?.split]).toEqual(['flexible', 'line', 50]);
    expect(view.notice).toMatch(/^Of what is pinned: .*straight line was the default/u);
    expect(readView('?v=1&split=50&pin=v%3D2').settings.curve).toBe('line');
  });

  it('says which part could not be read, and goes on', () => {
    const view = readView('?v=2&curve=log&pin=v%3D2%26curve%3Dzigzag&new=maybe');
    expect(view).toMatchObject({ settings: { curve: 'log' }, pinned: { curve: 'flexible' }, showsNewStudy: false });
    expect(view.notice).toMatch(/Of what is pinned: .*curve.*new/su);
  });
});
