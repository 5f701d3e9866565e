/** Names of the bands of loads as headings. */
import type { BandName } from '../model/result.ts';

export const BAND_HEADINGS = {
  light: 'Light loads',
  heavy: 'Heavy loads',
  all: 'All loads',
} as const satisfies Readonly<Record<BandName, string>>;
