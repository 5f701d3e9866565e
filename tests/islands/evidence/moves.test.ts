/** The moves of a reader: merged, undone, made again, returned to. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { writeSettings } from '../../../src/islands/analysis/settingsAddress.ts';
import { arriveAt, beginMoves, type Moves, moveTo, restMoves, returnTo } from '../../../src/islands/evidence/moves.ts';
import { CURVES, defaultSettings, type Settings } from '../../../src/model/settings.ts';

const shown = ({ places, now }: Moves) => places[now];
const withCurve = (curve: Settings['curve']) => ({ ...defaultSettings, curve });
const withSplit = (split: number) => ({ ...defaultSettings, split });
const made = (moves: Moves, ...settings: readonly Settings[]) =>
  settings.reduce((now, one) => restMoves(moveTo(now, one)), moves);

/** What a reader can do, as a change of settings. */
const change: fc.Arbitrary<(settings: Settings) => Settings> = fc.oneof(
  fc.constantFrom(...CURVES).map((curve) => (settings: Settings) => ({ ...settings, curve })),
  fc.constantFrom(null, 45, 50, 60).map((split) => (settings: Settings) => ({ ...settings, split })),
  fc.constantFrom(0.8, 0.9, 0.925).map((keptShare) => (settings: Settings) => ({ ...settings, keptShare })),
  fc
    .constantFrom<Settings['include']['trainingStatus']>([], ['trained'], ['untrained'])
    .map((trainingStatus) => (settings: Settings) => ({
      ...settings,
      include: { ...settings.include, trainingStatus },
    })),
  fc.constant(() => defaultSettings),
);

describe('moves', () => {
  it('of any sequence, drags among them, lead back to each address by as many undos, and forth again', () => {
    const drag = fc.array(change, { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(fc.array(drag, { maxLength: 12 }), (drags) => {
        let moves = beginMoves(defaultSettings);
        for (const steps of drags) {
          for (const by of steps) moves = moveTo(moves, by(shown(moves)));
          moves = restMoves(moves);
        }
        const addresses = moves.places.map(writeSettings);
        expect(addresses[0]).toBe('');
        for (let place = moves.now; place > 0; place--) {
          moves = returnTo(moves, place - 1);
          expect(writeSettings(shown(moves))).toBe(addresses[place - 1]);
          expect(writeSettings(moves.left ?? defaultSettings)).toBe(addresses[place]);
        }
        for (let place = 1; place < addresses.length; place++) {
          moves = returnTo(moves, place);
          expect(writeSettings(shown(moves))).toBe(addresses[place]);
        }
      }),
    );
  });

  it('of one slider are one until it rests, from where it began', () => {
    const dragged = [61, 62, 65].reduce((moves, split) => moveTo(moves, withSplit(split)), beginMoves(defaultSettings));
    expect(dragged.places).toEqual([defaultSettings, withSplit(65)]);
    expect(dragged.left).toEqual(defaultSettings);
    const again = moveTo(restMoves(dragged), withSplit(66));
    expect(again.places).toHaveLength(3);
    expect(again.left).toEqual(withSplit(65));
  });

  it('of another control begin anew even before the first has rested', () => {
    const moves = moveTo(moveTo(beginMoves(defaultSettings), withSplit(65)), { ...withSplit(65), curve: 'log' });
    expect(moves.places).toHaveLength(3);
  });

  it('back to where a drag began are none', () => {
    const moves = moveTo(moveTo(beginMoves(defaultSettings), withSplit(65)), defaultSettings);
    expect(moves).toEqual(beginMoves(defaultSettings));
  });

  it('after an undo take the place of those that were undone', () => {
    const undone = returnTo(made(beginMoves(defaultSettings), withCurve('log'), withCurve('line')), 1);
    expect(made(undone, withSplit(50)).places).toEqual([defaultSettings, withCurve('log'), withSplit(50)]);
  });

  it('by “back” go to the nearest place of these settings, and to a new one where there is none', () => {
    const moves = made(beginMoves(defaultSettings), withCurve('log'), defaultSettings, withCurve('line'));
    expect(arriveAt(moves, defaultSettings).now).toBe(2);
    const arrived = arriveAt(moves, withSplit(42));
    expect([arrived.now, arrived.places.length, arrived.isGoing]).toEqual([4, 5, false]);
  });

  it('are kept up to a number, the newest', () => {
    const many = Array.from({ length: 100 }, (_, i) => withSplit(30 + (i % 50)));
    const moves = made(beginMoves(defaultSettings), ...many);
    expect(moves.places.length).toBe(60);
    expect(shown(moves)).toEqual(many.at(-1));
  });

  it('to a place that does not exist are refused', () => {
    expect(() => returnTo(beginMoves(defaultSettings), 3)).toThrow('invalid place of 1: 3');
  });
});
