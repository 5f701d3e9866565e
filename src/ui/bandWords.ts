/** Names of the bands of loads. Apart from their looks, which come with the library that draws. */
import type { BandName } from '../model/result.ts';

export const BAND_HEADINGS = {
  light: 'Light loads',
  heavy: 'Heavy loads',
  all: 'All loads',
} as const satisfies Readonly<Record<BandName, string>>;

/** “light loads”: inside a sentence. */
export function nameOfBand(band: BandName): string {
  return BAND_HEADINGS[band].toLowerCase();
}
