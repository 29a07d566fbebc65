/** Data sets of the NIST Statistical Reference Datasets, linear regression, with their certified values. */
export type CertifiedFit = {
  readonly columns: readonly (readonly number[])[];
  readonly observed: readonly number[];
  readonly coefficients: readonly number[];
  readonly standardErrors: readonly number[];
  readonly residualSd: number;
  readonly rSquared: number;
};

const numbers = (text: string): readonly number[] => text.trim().split(/\s+/).map(Number);
const ones = (column: readonly number[]): readonly number[] => column.map(() => 1);

const NORRIS_X = numbers(`0.2 337.4 118.2 884.6 10.1 226.5 666.3 996.3 448.6 777.0 558.2 0.4 0.6 775.5 666.9 338.0
  447.5 11.6 556.0 228.1 995.8 887.6 120.2 0.3 0.3 556.8 339.1 887.2 999.0 779.0 11.1 118.3 229.2 669.1 448.9 0.5`);

/** Norris, 36 points, lower level of difficulty: a meter against a standard one. */
export const NORRIS: CertifiedFit = {
  columns: [ones(NORRIS_X), NORRIS_X],
  observed: numbers(`0.1 338.8 118.1 888.0 9.2 228.1 668.5 998.5 449.1 778.9 559.2 0.3 0.1 778.1 668.8 339.3 448.9 10.8
    557.7 228.3 998.0 888.8 119.6 0.3 0.6 557.6 339.3 888.0 998.5 778.9 10.2 117.6 228.9 668.4 449.2 0.2`),
  coefficients: [-0.262323073774029, 1.00211681802045],
  standardErrors: [0.232818234301152, 0.429796848199937e-3],
  residualSd: 0.884796396144373,
  rSquared: 0.999993745883712,
};

const PONTIUS_X = Array.from({ length: 40 }, (_, index) => 150_000 * ((index % 20) + 1));

/** Pontius, 40 points, lower level of difficulty, quadratic: a load cell. */
export const PONTIUS: CertifiedFit = {
  columns: [ones(PONTIUS_X), PONTIUS_X, PONTIUS_X.map((x) => x ** 2)],
  observed: numbers(`.11019 .21956 .32949 .43899 .54803 .65694 .76562 .87487 .98292 1.09146
    1.20001 1.30822 1.41599 1.52399 1.63194 1.73947 1.84646 1.95392 2.06128 2.16844
    .11052 .22018 .32939 .43886 .54798 .65739 .76596 .87474 .98300 1.09150
    1.20004 1.30818 1.41613 1.52408 1.63159 1.73965 1.84696 1.95445 2.06177 2.16829`),
  coefficients: [0.673565789473684e-3, 0.732059160401003e-6, -0.316081871345029e-14],
  standardErrors: [0.107938612033077e-3, 0.157817399981659e-9, 0.486652849992036e-16],
  residualSd: 0.205177424076185e-3,
  rSquared: 0.999999900178537,
};

const LONGLEY_ROWS = `60323 83.0 234289 2356 1590 107608 1947
  61122 88.5 259426 2325 1456 108632 1948
  60171 88.2 258054 3682 1616 109773 1949
  61187 89.5 284599 3351 1650 110929 1950
  63221 96.2 328975 2099 3099 112075 1951
  63639 98.1 346999 1932 3594 113270 1952
  64989 99.0 365385 1870 3547 115094 1953
  63761 100.0 363112 3578 3350 116219 1954
  66019 101.2 397469 2904 3048 117388 1955
  67857 104.6 419180 2822 2857 118734 1956
  68169 108.4 442769 2936 2798 120445 1957
  66513 110.8 444546 4681 2637 121950 1958
  68655 112.6 482704 3813 2552 123366 1959
  69564 114.2 502601 3931 2514 125368 1960
  69331 115.7 518173 4806 2572 127852 1961
  70551 116.9 554894 4007 2827 130081 1962`
  .split("\n")
  .map(numbers);
const longleyColumn = (index: number) => LONGLEY_ROWS.map((row) => row[index] ?? Number.NaN);

/** Longley, 16 points, higher level of difficulty, six columns and an intercept: ill-conditioned. */
export const LONGLEY: CertifiedFit = {
  columns: [ones(LONGLEY_ROWS.map(() => 1)), ...[1, 2, 3, 4, 5, 6].map(longleyColumn)],
  observed: longleyColumn(0),
  coefficients: [
    -3482258.63459582, 15.0618722713733, -0.35819179292591e-1, -2.02022980381683, -1.03322686717359,
    -0.511041056535807e-1, 1829.15146461355,
  ],
  standardErrors: [
    890420.383607373, 84.9149257747669, 0.334910077722432e-1, 0.488399681651699, 0.214274163161675, 0.22607320006937,
    455.478499142212,
  ],
  residualSd: 304.854073561965,
  rSquared: 0.995479004577296,
};

const NOINT1_X = Array.from({ length: 11 }, (_, index) => 60 + index);

/** NoInt1, 11 points, average level of difficulty, through the origin: R² about zero. */
export const NOINT1: CertifiedFit = {
  columns: [NOINT1_X],
  observed: Array.from({ length: 11 }, (_, index) => 130 + index),
  coefficients: [2.07438016528926],
  standardErrors: [0.165289256198347e-1],
  residualSd: 3.56753034006338,
  rSquared: 0.999365492298663,
};

/** NoInt2, 3 points, average level of difficulty, through the origin: R² about zero. */
export const NOINT2: CertifiedFit = {
  columns: [[4, 5, 6]],
  observed: [3, 4, 4],
  coefficients: [0.727272727272727],
  standardErrors: [0.420827318078432e-1],
  residualSd: 0.369274472937998,
  rSquared: 0.993348115299335,
};
