/**
 * Linear-regression sets of the NIST Statistical Reference Datasets with their certified values
 * (National Institute of Standards and Technology, StRD, https://www.itl.nist.gov/div898/strd/).
 */
export const NIST_SOURCE =
  'National Institute of Standards and Technology, Statistical Reference Datasets, https://www.itl.nist.gov/div898/strd/';

const numbers = (text: string) => text.trim().split(/\s+/).map(Number);
const range = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, i) => from + i);
const powers = (x: readonly number[], degree: number) => range(0, degree).map((k) => x.map((value) => value ** k));

export interface CertifiedRegression {
  readonly name: string;
  readonly columns: readonly (readonly number[])[];
  readonly y: readonly number[];
  readonly coefficients: readonly number[];
  /** null where the fit is exact and its standard deviations are 0. */
  readonly standardDeviations: readonly number[] | null;
  readonly residualSd: number;
  /** Significant digits asked of coefficients and standard deviations. */
  readonly digits: number;
}

const norrisX = numbers(`0.2 337.4 118.2 884.6 10.1 226.5 666.3 996.3 448.6 777.0 558.2 0.4 0.6 775.5 666.9 338.0 447.5
  11.6 556.0 228.1 995.8 887.6 120.2 0.3 0.3 556.8 339.1 887.2 999.0 779.0 11.1 118.3 229.2 669.1 448.9 0.5`);
const pontiusX = [...range(1, 20), ...range(1, 20)].map((i) => 150000 * i);
const wamplerX = range(0, 20);

export const CERTIFIED: readonly CertifiedRegression[] = [
  {
    name: 'Norris',
    columns: powers(norrisX, 1),
    y: numbers(`0.1 338.8 118.1 888.0 9.2 228.1 668.5 998.5 449.1 778.9 559.2 0.3 0.1 778.1 668.8 339.3 448.9 10.8 557.7
      228.3 998.0 888.8 119.6 0.3 0.6 557.6 339.3 888.0 998.5 778.9 10.2 117.6 228.9 668.4 449.2 0.2`),
    coefficients: [-0.262323073774029, 1.00211681802045],
    standardDeviations: [0.232818234301152, 0.000429796848199937],
    residualSd: 0.884796396144373,
    digits: 9,
  },
  {
    name: 'Pontius',
    columns: powers(pontiusX, 2),
    y: numbers(`0.11019 0.21956 0.32949 0.43899 0.54803 0.65694 0.76562 0.87487 0.98292 1.09146 1.20001 1.30822 1.41599
      1.52399 1.63194 1.73947 1.84646 1.95392 2.06128 2.16844 0.11052 0.22018 0.32939 0.43886 0.54798 0.65739 0.76596
      0.87474 0.98300 1.09150 1.20004 1.30818 1.41613 1.52408 1.63159 1.73965 1.84696 1.95445 2.06177 2.16829`),
    coefficients: [0.000673565789473684, 7.32059160401003e-7, -3.16081871345029e-15],
    standardDeviations: [0.000107938612033077, 1.57817399981659e-10, 4.86652849992036e-17],
    residualSd: 0.000205177424076185,
    digits: 9,
  },
  {
    name: 'Longley',
    columns: [
      Array(16).fill(1),
      numbers('83.0 88.5 88.2 89.5 96.2 98.1 99.0 100.0 101.2 104.6 108.4 110.8 112.6 114.2 115.7 116.9'),
      numbers(`234289 259426 258054 284599 328975 346999 365385 363112 397469 419180 442769 444546 482704 502601 518173
        554894`),
      numbers('2356 2325 3682 3351 2099 1932 1870 3578 2904 2822 2936 4681 3813 3931 4806 4007'),
      numbers('1590 1456 1616 1650 3099 3594 3547 3350 3048 2857 2798 2637 2552 2514 2572 2827'),
      numbers(`107608 108632 109773 110929 112075 113270 115094 116219 117388 118734 120445 121950 123366 125368 127852
        130081`),
      range(1947, 1962),
    ],
    y: numbers('60323 61122 60171 61187 63221 63639 64989 63761 66019 67857 68169 66513 68655 69564 69331 70551'),
    coefficients: [
      -3482258.63459582, 15.0618722713733, -0.035819179292591, -2.02022980381683, -1.03322686717359,
      -0.0511041056535807, 1829.15146461355,
    ],
    standardDeviations: [
      890420.383607373, 84.9149257747669, 0.0334910077722432, 0.488399681651699, 0.214274163161675, 0.22607320006937,
      455.478499142212,
    ],
    residualSd: 304.854073561965,
    digits: 9,
  },
  {
    name: 'NoInt1',
    columns: [range(60, 70)],
    y: range(130, 140),
    coefficients: [2.07438016528926],
    standardDeviations: [0.0165289256198347],
    residualSd: 3.56753034006338,
    digits: 9,
  },
  {
    name: 'Wampler1',
    columns: powers(wamplerX, 5),
    y: wamplerX.map((x) => range(0, 5).reduce((sum, k) => sum + x ** k, 0)),
    coefficients: [1, 1, 1, 1, 1, 1],
    standardDeviations: null,
    residualSd: 0,
    digits: 8,
  },
  {
    name: 'Wampler2',
    columns: powers(wamplerX, 5),
    y: wamplerX.map((x) => range(0, 5).reduce((sum, k) => sum + (x / 10) ** k, 0)),
    coefficients: [1, 0.1, 0.01, 0.001, 0.0001, 0.00001],
    standardDeviations: null,
    residualSd: 0,
    digits: 8,
  },
];
