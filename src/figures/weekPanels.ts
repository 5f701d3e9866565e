/** Panels that stand one above the other, each with a scale of its own: Plot has one scale of heights for a picture. */

/** Tops and heights of the panels, and their common foot, pixels from the top of the frame. */
export const PLACES = {
  growth: { top: 52, height: 100 },
  hours: { top: 192, height: 100 },
  sets: { top: 348, height: 80 },
} as const;
export const FOOT = 428;
export const MARGINS = { marginLeft: 36, marginRight: 8, marginTop: 8, marginBottom: 42 } as const;
/** Pixels above a panel at which its name stands where a key stands between the two, and where none does. */
export const ABOVE = { key: 19, nameOverKey: 40, name: 19 } as const;
/** Shares of the ink of the parts of a bar, the fewest left first: told apart in grey too. */
export const SHADES = [0.95, 0.45, 0.12] as const;
export const INK = 'var(--ink)';

export interface Panel {
  /** Pixels from the top of the frame. */
  readonly top: number;
  readonly height: number;
  /** Values at its bottom and its top. */
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly number[];
  /** Pixels from the top of the frame; a value beyond the panel stands at its edge. */
  readonly at: (value: number) => number;
}

/** Lines across a panel, at most. */
const MOST_TICKS = 5;

/** @param steps between ticks that are tried, the smallest first; doubled beyond the last */
export function makePanel(
  { top, height }: { readonly top: number; readonly height: number },
  { from, to }: { readonly from: number; readonly to: number },
  steps: readonly number[],
): Panel {
  const count = (step: number) => Math.floor(to / step) - Math.ceil(from / step) + 1;
  let step = steps.find((one) => count(one) <= MOST_TICKS) ?? steps[steps.length - 1];
  while (count(step) > MOST_TICKS) step *= 2;
  const first = Math.ceil(from / step) * step;
  return {
    top,
    height,
    from,
    to,
    ticks: Array.from({ length: count(step) }, (_, i) => first + i * step),
    at: (value) => {
      const inside = Math.min(to, Math.max(from, value));
      return top + height * (1 - (inside - from) / (to - from));
    },
  };
}

/** The next whole multiple of a unit from a value on. */
export function upTo(value: number, unit: number): number {
  return Math.ceil(value / unit) * unit;
}
