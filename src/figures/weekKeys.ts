/** What the marks of the weeks mean, above their panels. */
import * as Plot from '@observablehq/plot';
import type { BandName } from '../model/result.ts';
import { RESERVE_PARTS } from '../practice/programme/byWeek.ts';
import { LOAD_LOOKS } from './looks.ts';
import { ABOVE, INK, MARGINS, PLACES, SHADES } from './weekPanels.ts';

/** Pixels from the left at which signs of the keys stand, and from a sign to its words. */
const SIGNS = { growth: [0, 104], sets: [0, 78, 186] } as const;
const TO_WORDS = 9;

/** @param bands loads that are drawn apart */
export function drawKeys(bands: readonly BandName[], isPair: boolean): readonly Plot.Markish[] {
  const place = (y: number, dx: number) => ({ y, frameAnchor: 'left', dx: dx - MARGINS.marginLeft + 6 }) as const;
  const words = (text: string, y: number, dx: number) =>
    Plot.text([text], { ...place(y, dx + TO_WORDS), textAnchor: 'start', fill: INK });
  const growthAt = PLACES.growth.top - ABOVE.key;
  const setsAt = PLACES.sets.top - ABOVE.key;
  const [first, second] = SIGNS.growth;
  const ofGrowth = isPair
    ? [
        Plot.dot(['version one'], { ...place(growthAt, first), r: 4.5, fill: INK }),
        words('version one', growthAt, first),
        Plot.dot(['version two'], {
          ...place(growthAt, second),
          r: 4.5,
          fill: 'var(--paper)',
          stroke: INK,
          strokeWidth: 1.5,
        }),
        words('version two', growthAt, second),
      ]
    : bands.flatMap((band, i) => {
        const { symbol, colour } = LOAD_LOOKS[band];
        const text = `${band} loads`;
        return [
          Plot.dot([text], { ...place(growthAt, SIGNS.growth[i]), symbol, fill: colour, r: 4.5 }),
          words(text, growthAt, SIGNS.growth[i]),
        ];
      });
  return [
    ...ofGrowth,
    ...RESERVE_PARTS.flatMap(({ name }, part) => [
      Plot.dot([name], {
        ...place(setsAt, SIGNS.sets[part]),
        symbol: 'square',
        r: 5,
        fill: INK,
        fillOpacity: SHADES[part],
        stroke: INK,
      }),
      words(name, setsAt, SIGNS.sets[part]),
    ]),
  ];
}
