import type { BenchJob } from "#shared/calendar/calendar-settings.ts";
import type { Service } from "#shared/job/record-schema.ts";
import { roundTo } from "#shared/units/round-to.ts";
import { lbfft, torqueIn } from "#shared/units/torque.ts";

/** Headings and labels of a service record. */
export const RECORD = {
  title: "Service record",
  titleOf: (number: string) => `Service record ${number}`,
  none: "There is no service record yet. It is made when the unit is shipped.",
  takenBack: "The service record was taken back. A new one is made when the unit is shipped again.",
  link: "Service record",
  print: "Print the record",
  backToTag: "Back to the job tag",
  short: "In short",
  found: "Found",
  left: "Left",
  unit: "Unit",
  serial: "Serial number",
  noSerial: "Not known",
  date: "Date",
  hours: "Engine hours",
  hoursText: (hours: number) => `${hours} h`,
  noHours: "Not known",
  work: "Work",
  worked: "By",
  settings: "Judged by settings",
  version: (version: number) => `version ${version}`,
  code: "Code",
  codeHow: (address: string) => `Check it at ${address}.`,
  qr: (code: string) => `QR code that checks ${code}`,
  parts: "Parts as found",
  part: "Part",
  condition: "Condition",
  note: "Note",
  readings: "Slip in numbers",
  asFound: "As found",
  asLeft: "As left",
  target: "Target and band",
  eachReading: "Readings",
  breakaway: "Breakaway peak",
  tool: "Tool",
  mean: "Mean",
  interval: "Expanded uncertainty",
  dof: "Effective degrees of freedom",
  infinite: "Infinite",
  inBand: "Chance in the band",
  decision: "Decision",
  nothing: "–",
  skipped: "Steps left out",
  notes: "Notes from the bench",
  partsUsed: "Parts that went in",
  noParts: "None",
  history: "Slip over engine hours",
  historyTable: "All services of this unit",
  noChart: "No drawing: the engine hours are not known.",
  noSerialHistory: "No earlier services are shown: without a serial number the unit is not known again.",
  torqueAxis: "Slip, lbf·ft",
  hoursAxis: "Engine hours",
  record: "Record",
  engine: "The engine",
  sources: "Rules and sources",
  source: (source: string) => `Source: ${source}.`,
  corrected: (why: string) => `This record takes the place of an earlier one. Why: ${why}`,
  unsigned: "The shop advises. It does not certify.",
} as const;

export const DECISION_WORDS = {
  accept: "Accepted",
  reject: "Not accepted",
  "not-proved": "Not proved",
} as const satisfies Record<NonNullable<NonNullable<Service["left"]["slip"]>["decision"]>["is"], string>;

/** What was done; `slipSet` only where the slip was read at the end and is not out of its band. */
export const WORK_DONE: Readonly<Record<BenchJob, { readonly slipSet: string; readonly slipNotSet: string }>> = {
  "slip-check": { slipSet: "We measured the slip and set it.", slipNotSet: "We looked the unit over." },
  "full-rebuild": { slipSet: "We rebuilt the unit and set its slip.", slipNotSet: "We rebuilt the unit." },
  "stop-riding": {
    slipSet: "We took the unit apart, rebuilt it and set its slip.",
    slipNotSet: "We took the unit apart and rebuilt it.",
  },
};

/** @example slipText(17.85) // "17.85 lbf·ft (24.2 N·m)" */
export const slipText = (slip: number): string =>
  `${roundTo(slip, 2)} lbf·ft (${torqueIn("N.m", lbfft(slip)).toFixed(1)} N·m)`;

/** A date without its weekday, for a table. @example dayText("2027-05-01", "en-US") // "May 1, 2027" */
export const dayText = (date: string, locale: string): string =>
  new Intl.DateTimeFormat(locale, { day: "numeric", month: "short", year: "numeric", timeZone: "UTC" }).format(
    new Date(`${date}T00:00:00Z`),
  );

/** Never surer than it is. @example percentText(0.953) // "95 %"; percentText(0.998) // "over 99 %" */
export function percentText(share: number): string {
  if (share >= 0.995) return "over 99 %";
  if (share < 0.005) return "under 1 %";
  return `${Math.round(share * 100)} %`;
}

/**
 * An interval in tenths, rounded outwards: it never claims more than was measured.
 * @example betweenText(17.85, 0.12, 0.95) // "between 17.7 and 18.0 with 95 % confidence"
 */
export function betweenText(mean: number, expanded: number, coverage: number): string {
  const tenths = (value: number, round: (it: number) => number) => (round(roundTo(value * 10, 6)) / 10).toFixed(1);
  const [low, high] = [tenths(mean - expanded, Math.floor), tenths(mean + expanded, Math.ceil)];
  return `between ${low} and ${high} with ${percentText(coverage)} confidence`;
}
