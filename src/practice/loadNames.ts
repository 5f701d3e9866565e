/** What the loads of a fit are called, everywhere. */
import type { BandName } from '../model/result.ts';

/** Inside a sentence. */
export const LOAD_NAMES = {
  light: 'light loads',
  heavy: 'heavy loads',
  all: 'all loads',
} as const satisfies Readonly<Record<BandName, string>>;

/** As a heading. */
export const LOAD_HEADINGS = {
  light: 'Light loads',
  heavy: 'Heavy loads',
  all: 'All loads',
} as const satisfies Readonly<Record<BandName, string>>;

/** What a target was read from: the fit of a band, or near the split the joint fit. */
export const SOURCE_NAMES = { ...LOAD_NAMES, joint: 'fit of all loads' } as const;
