/**
 * What the incomplete beta function and its inverse hold ready for arguments that Student's t never has.
 *
 * The t distribution with v degrees of freedom asks for I_x(v/2, 1/2), regularised, and its inverse (Abramowitz and
 * Stegun 1964, 26.7.1), so that one of the two arguments is always 1/2:
 * - the inverse starts from its expansion for Student's t and never from Temme's three, the last of which inverts the
 *   incomplete gamma function;
 * - the function itself is a series, or that of a large and a small argument, never the binomial sum nor the continued
 *   fraction, which are for two arguments above 1, nor what is not regularised;
 * - inside that series the incomplete gamma function is asked for with the argument 1/2, from v = 0.4 on: never the
 *   expansions for a large argument, the sum for a whole one, or the upper part below x = 0.2.
 *
 * `tests/scripts/standInsBuilt.test.ts` holds the script so built to the library whole.
 */

/** Files, by the package in which they are imported. */
const UNNEEDED: Readonly<Record<string, readonly string[]>> = {
  'math-base-special-kernel-betaincinv': ['temme1', 'temme2', 'temme3'],
  'math-base-special-kernel-betainc': [
    'binomial_ccdf',
    'ibeta_fraction2',
    'rising_factorial_ratio',
    'full_igamma_prefix',
  ],
  'math-base-special-gammainc': [
    'finite_gamma_q',
    'full_igamma_prefix',
    'igamma_temme_large',
    'tgamma_i_large_x',
    'tgamma_small_upper_part',
  ],
  // Sines and cosines of angles above 2²⁰ π/2.
  'math-base-special-rempio2': ['kernel_rempio2'],
  // Makes a function for one distribution, which the engine has no use for.
  'stats-base-dists-t-cdf': ['factory'],
  'stats-base-dists-t-quantile': ['factory'],
  'stats-base-dists-normal-cdf': ['factory'],
  'stats-base-dists-normal-quantile': ['factory'],
  'stats-base-dists-degenerate-quantile': ['factory'],
  'stats-base-dists-degenerate-cdf': ['factory'],
  'math-base-tools-evalpoly': ['factory'],
  // For browsers without generators.
  'math-base-tools-sum-series': ['basic'],
  'math-base-tools-continued-fraction': ['basic'],
};

const HERE = 'scripts/standIns';

/** In the form of the list that they join (index.ts). */
export const STUDENTS_T: readonly { readonly source: string; readonly importer?: string; readonly file: string }[] = [
  ...Object.entries(UNNEEDED).flatMap(([name, files]) =>
    files.map((file) => ({ source: `./${file}.js`, importer: `/@stdlib/${name}/`, file: `${HERE}/unneededWay.cjs` })),
  ),
  {
    source: './factorials.json',
    importer: '/@stdlib/math-base-special-factorial/',
    file: `${HERE}/factorials.cjs`,
  },
  { source: '@stdlib/utils-define-nonenumerable-read-only-property', file: `${HERE}/ownProperty.cjs` },
];
