/** Konstantopoulos 2011 (Res Synth Methods 2:61), table 5 and its three-level ML fit: 56 schools in 11 districts. */
import type { Observation } from '../../src/model/observations.ts';

export const PRINTED = {
  source: 'Konstantopoulos 2011, Res Synth Methods 2:61',
  /** Decimals that are printed. */
  decimals: 4,
  mean: 0.1845,
  standardError: 0.0805,
  betweenDistricts: 0.0577,
  betweenSchools: 0.0329,
} as const;

/** Effect and variance of each school in turn. */
const BY_DISTRICT: Readonly<Record<string, string>> = {
  '11': '-.18 .118 -.22 .118 .23 .144 -.30 .144',
  '12': '.13 .014 -.26 .014 .19 .015 .32 .024',
  '18': '.45 .023 .38 .043 .29 .012',
  '27': '.16 .020 .65 .004 .36 .004 .60 .007',
  '56': '.08 .019 .04 .007 .19 .005 -.06 .004',
  '58': '-.18 .020 .00 .018 .00 .019 -.28 .022 -.04 .020 -.30 .021 .07 .006 .00 .007 .05 .007 -.08 .007 -.09 .007',
  '71': '.30 .015 .98 .011 1.19 .010',
  '86': '-.07 .001 -.05 .001 -.01 .001 .02 .001 -.03 .001 .00 .001 .01 .001 -.10 .001',
  '91': '.50 .010 .66 .011 .20 .010 .00 .009 .05 .013 .07 .013',
  '108': '-.52 .031 .70 .031 -.03 .030 .27 .030 -.34 .030',
  '644': '.12 .087 .61 .082 .04 .067 -.05 .067',
};

/** Studies are the districts. */
export const SCHOOLS: readonly Observation[] = Object.entries(BY_DISTRICT).flatMap(([study, text]) => {
  const numbers = text.split(' ').map(Number);
  return Array.from({ length: numbers.length / 2 }, (_, i) => ({
    study,
    cohort: null,
    y: numbers[2 * i],
    v: numbers[2 * i + 1],
  }));
});
