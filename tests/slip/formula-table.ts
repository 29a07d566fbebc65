/** One exported formula: where it is, where it comes from, and how and in which test it is checked. */
export type FormulaRow = {
  readonly module: string;
  readonly name: string;
  readonly source: string;
  readonly checked: string;
  readonly test: string;
};

const rows = (
  module: string,
  test: string,
  each: Readonly<Record<string, readonly [source: string, checked: string]>>,
) => Object.entries(each).map(([name, [source, checked]]): FormulaRow => ({ module, name, source, checked, test }));

const EXACT = "definitions, NIST SP 811 (2008), Appendix B";
const EXACT_CHECK = "seven figures of SP 811, exact rows, an independent units library, round trip";
const MAKER = "a value with its unit, no arithmetic";
const DISC = "DIN EN 16984:2017-02";
const BUDYNAS = "Shigley's Mechanical Engineering Design, 10th ed., 16-5; Khurmi and Gupta, ch. 10";
const OURS = "default of this project";
const DATES = "ISO 8601 calendar dates, proleptic Gregorian";

/** Every exported function of units, measurement, life and slip that works out a number. */
export const FORMULAS: readonly FormulaRow[] = [
  ...rows("units/length", "tests/units/length.test.ts", {
    length: [MAKER, "round trip"],
    lengthIn: [EXACT, EXACT_CHECK],
  }),
  ...rows("units/temperature", "tests/units/temperature.test.ts", {
    temperature: [MAKER, "round trip"],
    temperatureIn: [EXACT, EXACT_CHECK],
  }),
  ...rows("units/force", "tests/units/force.test.ts", { force: [MAKER, "round trip"], forceIn: [EXACT, EXACT_CHECK] }),
  ...rows("units/power", "tests/units/power.test.ts", { power: [MAKER, "round trip"], powerIn: [EXACT, EXACT_CHECK] }),
  ...rows("units/pressure", "tests/units/pressure.test.ts", {
    pressure: [MAKER, "round trip"],
    pressureIn: [EXACT, EXACT_CHECK],
  }),
  ...rows("units/torque", "tests/units/torque.test.ts", {
    torque: [MAKER, "round trip"],
    lbfft: [MAKER, "round trip"],
    newtonMetres: [MAKER, "round trip"],
    torqueIn: [EXACT, EXACT_CHECK],
    plus: ["addition in one unit", "undone by minus; mixed units by hand"],
    minus: ["subtraction in one unit", "undone by plus; mixed units by hand"],
  }),
  ...rows("units/round-to", "tests/units/round-to.test.ts", {
    roundTo: ["ECMAScript toFixed", "rows; half a step at most, order kept"],
  }),
  ...rows("units/calendar-date", "tests/units/calendar-date.test.ts", {
    dayNumber: [DATES, "an independent calendar library"],
    dateOfDay: [DATES, "undoes dayNumber"],
    plusDays: [DATES, "an independent calendar library"],
    plusMonths: [DATES, "an independent calendar library"],
    daysBetween: [DATES, "an independent calendar library"],
    yearsBetween: ["Julian year of 365.25 days", "within three days of the calendar's"],
  }),
  ...rows("measurement/combined-uncertainty", "tests/measurement/combined-uncertainty.test.ts", {
    combine: ["JCGM 100:2008, 5.1.2 (10), G.4.1 (G.2b)", "JCGM 100:2008, example H.1; bounds"],
  }),
  ...rows("measurement/repeatability", "tests/measurement/combined-uncertainty.test.ts", {
    repeated: ["JCGM 100:2008, 4.2.1 to 4.2.3", "an independent statistics library"],
  }),
  ...rows("measurement/estimate", "tests/measurement/estimate.test.ts", {
    around: ["JCGM 100:2008, 6.2", "by hand"],
    coverageFactor: ["JCGM 100:2008, 6.2 and G.1.3", "JCGM 100:2008, table G.1; an independent normal quantile"],
  }),
  ...rows("measurement/incomplete-beta", "tests/measurement/incomplete-beta.test.ts", {
    incompleteBeta: ["NIST Digital Library of Mathematical Functions, 8.17", "binomial sums"],
  }),
  ...rows("measurement/log-gamma", "tests/measurement/incomplete-beta.test.ts", {
    logGamma: [
      "Stirling's series, NIST Digital Library of Mathematical Functions, 5.11",
      "an independent gamma function; ln x from x to x + 1",
    ],
  }),
  ...rows("measurement/normal-distribution", "tests/measurement/normal-distribution.test.ts", {
    normalCdf: [
      "NIST Digital Library of Mathematical Functions, 7.6.2 and 7.9.1",
      "two independent libraries; JCGM 106",
    ],
    normalQuantile: ["Newton's steps on the upper tail", "JCGM 106:2012, 7.3, table 1; an independent library"],
  }),
  ...rows("measurement/t-distribution", "tests/measurement/t-distribution.test.ts", {
    tQuantile: ["Abramowitz and Stegun, 26.7.1 and 26.7.5", "JCGM 100:2008, table G.2; an independent library"],
  }),
  ...rows("measurement/least-squares", "tests/measurement/least-squares.test.ts", {
    leastSquares: [
      "Golub and Van Loan, Matrix Computations, 4th ed., 5.3",
      "NIST StRD Norris, Pontius, Longley, NoInt1, NoInt2, Wampler1; an independent QR decomposition",
    ],
  }),
  ...rows("life/hours-span", "tests/life/service-clock.test.ts", {
    exactly: ["interval arithmetic", "through the service clock"],
    upTo: ["interval arithmetic", "through the service clock"],
    sinceTheLast: ["interval arithmetic", "through the service clock"],
    hoursBetween: ["subtraction to a millionth of an hour", "rows by hand"],
  }),
  ...rows("life/hours-now", "tests/life/service-clock.test.ts", {
    hoursNow: [OURS, "rows; always holds the truth, whatever was forgotten"],
    riddenSince: [OURS, "rows by hand"],
    latestDayFor: [OURS, "undoes riddenSince"],
  }),
  ...rows("life/service-clock", "tests/life/service-clock.test.ts", {
    serviceClock: [OURS, "rows; always holds the truth, whatever was forgotten"],
  }),
  ...rows("life/wear-trend", "tests/life/wear-trend.test.ts", {
    wearTrend: ["JCGM 100:2008, 5.1.2 and G.3.2", "NIST StRD NoInt1, NoInt2; by hand; an independent t quantile; laws"],
  }),
  ...rows("slip/before-lock", "tests/slip/lock-nut-rise.test.ts", {
    beforeLock: ["common practice, no published source", "16.5 for 18; through slip plans"],
  }),
  ...rows("slip/lock-nut-rise", "tests/slip/lock-nut-rise.test.ts", {
    learnRise: [
      "Gelman and others, Bayesian Data Analysis, 3rd ed., 2.5",
      "by hand; a posterior summed over a grid; laws",
    ],
    beforeLockLearnt: ["common practice, no published source", "by hand"],
  }),
  ...rows("slip/click-limit", "tests/slip/tool-uncertainty.test.ts", {
    clickLimitPercent: ["ISO 6789-1:2017, 5.1.5", "rows of the standard, both sides of 10 N·m"],
  }),
  ...rows("slip/tool-uncertainty", "tests/slip/slip-reading.test.ts", {
    toolLimit: ["ISO 6789-1:2017, 5.1.5, % of the reading", "by hand; an independent second computation"],
    accuracyPart: ["JCGM 100:2008, 4.3.3 and 4.3.7", "by hand; an independent second computation"],
    resolutionPart: ["JCGM 100:2008, F.2.2.1", "by hand; an independent second computation"],
    stepIsCoarse: ["ISO 6789-1:2017, resolution at most a quarter of the limit", "rows of the standard"],
  }),
  ...rows("slip/provable-means", "tests/slip/provable-means.test.ts", {
    provableMeans: ["JCGM 106:2012, clause 8", "the decision on readings on either side of its ends"],
    provableAim: ["arithmetic", "by hand"],
    provableHundredths: ["arithmetic", "by hand"],
  }),
  ...rows("slip/conformity", "tests/slip/conformity.test.ts", {
    conformity: ["JCGM 106:2012, clause 7", "published specific risks; an independent normal distribution"],
    guardBand: ["JCGM 106:2012, clause 8", "ISO 14253-1:2017, ILAC-G8:09/2019; the risk that is left"],
  }),
  ...rows("slip/slip-reading", "tests/slip/slip-reading-laws.test.ts", {
    slipReading: ["JCGM 100:2008 and JCGM 106:2012", "by hand; a second computation by independent libraries; laws"],
  }),
  ...rows("slip/slip-plan", "tests/slip/slip-plan-laws.test.ts", {
    slipPlan: ["common practice, no published source", "rows of the trade; laws"],
    ceilingOf: ["common practice, no published source", "through slip plans"],
  }),
  ...rows("slip/standard-rules", "tests/slip/slip-plan-laws.test.ts", {
    standardAim: ["common practice, no published source", "through slip plans"],
    around: [OURS, "through slip plans"],
  }),
  ...rows("slip/disc-shape", "tests/slip/disc-spring.test.ts", {
    effectiveDisc: [DISC, "three values of K4; same load as a plain disc at 3/4 of the way to flat"],
  }),
  ...rows("slip/disc-spring", "tests/slip/disc-spring.test.ts", {
    discForce: [DISC, "85 rows of DIN 2093, 20 public reference rows, curve points"],
    forceCurve: [DISC, "through the load"],
    discRate: [DISC, "the numeric slope of the load"],
    flatLoad: [DISC, "curve points; Bhandari, example 10.26"],
    discStresses: [DISC, "foreword of DIN 2093:2013-12 (De 25); bending apart"],
    flatFrom: [`${DISC}, rate equation solved`, "the rate there; √2"],
    ratioFactors: [DISC, "K1 to K3 of five ratios"],
  }),
  ...rows("slip/spring-stack", "tests/slip/spring-stack.test.ts", {
    stackForce: [DISC, "four arrangements; n discs carry n loads"],
    stackForceBounds: [DISC, "three cases of friction"],
    loadingCurve: [DISC, "the same load as by itself"],
    frictionShare: [DISC, "grows with every layer"],
    stackRate: [DISC, "the numeric slope of the load"],
    stackTravel: [DISC, "by hand"],
    stackHeight: [DISC, "by hand"],
    stackFlatFrom: [DISC, "closed form at a height of 1.6 thicknesses"],
    shareLostByWear: [DISC, "26.7 % of disc B 50; laws"],
  }),
  ...rows("slip/friction-faces", "tests/slip/friction-faces.test.ts", {
    meanRadius: [BUDYNAS, "seven ratios of the theories"],
    torqueCapacity: [BUDYNAS, "Bhandari 11.1 to 11.8, Khurmi and Gupta 10.23 to 10.30, Jindal 22.5, Wentzell 16.1"],
    frictionFromSlip: [BUDYNAS, "undoes the torque"],
    frictionOf: [BUDYNAS, "keeps its interval"],
  }),
  ...rows("slip/contact-belief", "tests/slip/contact-belief.test.ts", {
    contactBelief: [
      "Bayes' theorem; JCGM 100:2008, 4.3.7 for a stack let go",
      "a sum over the whole plane; contradictions",
    ],
  }),
  ...rows("slip/next-travel", "tests/slip/next-nut.test.ts", {
    nextTravel: [`${DISC} and Bayes' theorem`, "units whose true place is known: coverage, never home, order"],
  }),
  ...rows("slip/next-nut", "tests/slip/next-nut.test.ts", {
    nextNut: [`${DISC} and Bayes' theorem`, "units whose true place is known: coverage, never home, order"],
  }),
  ...rows("slip/next-shims", "tests/slip/next-shims.test.ts", {
    nextShims: [`${DISC} and Bayes' theorem`, "units whose true place is known: never flat, whole steps rounded down"],
  }),
  ...rows("slip/impeller-heat", "tests/slip/impeller-heat.test.ts", {
    impellerHeat: ["Shigley, 10th ed., 3-16; DIN 7190-1:2017", "grown bore fits; never over the ceiling"],
    riseToGrow: ["Shigley, 10th ed., 3-16; DIN 7190-1:2017", "Junnarkar 1.14, Wentzell 6.3, a public calculation"],
  }),
  ...rows("slip/soak-tally", "tests/slip/soak-tally.test.ts", {
    soakTally: ["Donovan and others, 2015; shares add up: default of this project", "the trials themselves; additive"],
  }),
  ...rows("slip/load-check", "tests/slip/load-check.test.ts", {
    loadCheck: [
      "Çengel and Boles, ch. 7; Saravanamuttoo and others, ch. 4",
      "Çengel and Boles 7-15; three small machines",
    ],
    compressionRise: ["Çengel and Boles, ch. 7", "five published cases"],
    shaftTorque: ["P/ω", "Ganesan, example 8.10"],
  }),
];

/** Exported functions that only choose, pass on, draw or say. */
export const NOT_FORMULAS: Readonly<Record<string, string>> = {
  "slip/slip-rule firstMatch": "chooses a rule of a table",
  "slip/clutch-parts springsOf": "gives a clutch's figures the shape that the springs' formulas read",
  "slip/clutch-parts facesOf": "halves diameters",
  "slip/bench-advice adviseNut": "chooses the two tries that nextNut works on",
  "slip/bench-advice adviseShims": "chooses the two tries that nextShims works on",
  "slip/travel-words sayNut": "says it in words",
  "slip/travel-words sayShims": "says it in words",
  "slip/slip-dial dialScale": "drawing",
  "slip/slip-dial dialAngle": "drawing",
  "slip/slip-dial dialShapes": "drawing",
};
