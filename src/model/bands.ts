/** The bands of an analysis, whether loads were split or fitted together. */
import type { Analysis, Band, BandName, Bands } from './result.ts';

/** Each band with its name: light and heavy, or all. */
export function listBands<One>(bands: Bands<One>): readonly (readonly [name: BandName, band: One])[] {
  return 'all' in bands
    ? [['all', bands.all]]
    : [
        ['light', bands.light],
        ['heavy', bands.heavy],
      ];
}

/** The band of that name; undefined where the analysis splits loads otherwise. */
export function findBand<One>(bands: Bands<One>, name: BandName): One | undefined {
  return listBands(bands).find(([one]) => one === name)?.[1];
}

/** The band of an analysis by its name; throws where the analysis has no such band. */
export function bandOf({ bands }: Pick<Analysis, 'bands'>, name: BandName): Band {
  const band = findBand(bands, name);
  if (!band) throw new Error(`invalid band; the analysis has ${Object.keys(bands).join(', ')}: ${name}`);
  return band;
}

/** The same bands, with something else known of each. */
export function mapBands<One, Other>(bands: Bands<One>, make: (band: One) => Other): Bands<Other> {
  return 'all' in bands ? { all: make(bands.all) } : { light: make(bands.light), heavy: make(bands.heavy) };
}
