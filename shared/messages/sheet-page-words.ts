import type { SetBeforeLock } from "#shared/job/set-before-lock.ts";
import { INSPECTED_PARTS } from "#shared/job/sheet-entry.ts";
import type { OpenBecause, StepStanding } from "#shared/job/sheet-standing.ts";
import { PART_WORDS } from "#shared/messages/sheet-words.ts";
import { roundTo } from "#shared/units/round-to.ts";

/** Headings, labels and sentences of the bench sheet's page. */
export const SHEET = {
  title: (number: string) => `Bench sheet ${number}`,
  open: "Open the bench sheet",
  toJob: "Back to the job",
  steps: "Steps",
  stepOf: (place: number, count: number) => `Step ${place} of ${count}`,
  complete: "Every step is done or skipped with a reason. The job can be finished.",
  missing: (count: number) => (count === 1 ? "1 step is still open." : `${count} steps are still open.`),
  source: (source: string) => `Source: ${source}.`,
  by: (name: string, when: string) => `${name}, ${when}`,
  earlier: (count: number) => `Earlier entries (${count})`,
  saved: (step: string) => `Written down: ${step}.`,
  mend: "Not written down yet. Please mend:",
  mendField,
  done: "Done",
  rise: "Lock nut",
  notOnBench: (state: string) =>
    `This job is ${state}. The sheet can be read, and written only while the job is on the bench.`,
  starts: "The first entry puts this job on the bench.",

  keep: "Write it down",
  keepReadings: "Write these readings down",
  skip: "Skip this step",
  skipWhy: "Why is it skipped?",
  skipHint: "The reason is shown on the service record.",
  skipButton: "Skip it",
  note: "Note",
  noteOn: (part: string) => `Note on: ${part}`,
  optional: "May be left empty.",

  readings: "Readings, lbf·ft",
  readingsHint: (fewest: number) =>
    fewest > 1 ? `At least ${fewest}. Leave the rest empty.` : "One or more. Leave the rest empty.",
  reading: (place: number) => `Reading ${place}`,
  breakaway: "Breakaway peak, lbf·ft",
  breakawayHint: "The first jerk, noted apart. It is never averaged in.",
  why: "Why is it left so?",
  whySlip: "Needed only where the readings do not prove the slip.",
  whyCount: "Needed only where the count is not what it should be.",

  tool: "Torque wrench",
  toolText: (kind: string, accuracy: number, step: number) => `${kind}, ${accuracy} %, steps of ${step}`,
  toolUnknown: "not described yet",
  toolKind: "Kind",
  toolAccuracy: "Accuracy, % of the reading",
  toolResolution: "Smallest step shown, lbf·ft",
  toolK: "Coverage factor k of its certificate",
  toolKHint: "Only where the accuracy is a certificate's expanded uncertainty.",

  needles: "How many?",
  needlesDue: (count: number) => `${count} should be there.`,

  try: (place: number) => `Try ${place}`,
  tryNut: "Set nut, degrees from first contact",
  tryShim: "Shims in all, mm",
  trySlip: "Slip, lbf·ft",
  tryReached: "Last turned",

  found: "What the bench found out",
  foundFamily: "How the unit is built",
  foundBoost: "Peak boost, psi",
  foundSerial: "Serial number, as read on the unit",
  foundBoostHint: "As measured or asked. Only where the plan lacks it or it is wrong.",
  asSaid: (said: string) => `As booked: ${said}`,
  notJudged: "Not judged",
  condition: "Condition",

  aim: "Final slip",
  aimText: (target: number, low: number, high: number) => `${target} lbf·ft, from ${low} to ${high}`,
  noAim: "No target yet. See the notices.",
  setBefore: "Set before the lock nut",
  buildNotKnown: "Not known how this unit is built, so nothing to set is given. Say it at the inspection.",
  setTo: (target: number, band: { readonly low: number; readonly high: number } | null) =>
    band === null ? `Set ${target} lbf·ft.` : `Set ${target} lbf·ft, from ${band.low} to ${band.high}.`,
  setBeforeText,
  riseText,
  notice: "NOTICE",

  dial: "Dial",
  mean: "Mean",
  expanded: "Expanded uncertainty",
  meanText: (mean: string, expanded: string) => `${mean} ± ${expanded} lbf·ft`,
  sayTool: "Say which wrench this is, below.",
  fewer: (left: number) => (left === 1 ? "1 more reading is wanted." : `${left} more readings are wanted.`),
  decision: { accept: "Accepted", reject: "Not accepted", "not-proved": "Not proved" },
  /** The same of a slip as it came in: nothing is accepted or refused. */
  asFound: { accept: "Within the band", reject: "Outside the band", "not-proved": "Near a limit of the band" },
  provable: (low: string, high: string) => `This wrench can prove a mean of ${low} to ${high} lbf·ft.`,
  proves: "This wrench can prove no mean within the band.",

  paperLine: "Not filled in yet",
} as const;

/** @example mendField("tries.slip.1") // "Slip, lbf·ft" */
export function mendField(name: string): string {
  const plain = name.replace(/\.\d+$/, "");
  const part = /^parts\.([\w-]+)\./.exec(plain)?.[1];
  const known = part === undefined ? undefined : INSPECTED_PARTS.find((it) => it === part);
  return known === undefined ? (FIELD_WORDS[plain] ?? name) : PART_WORDS[known];
}

/** @example setBeforeText(plan.beforeLock) // "Set 16.5 lbf·ft before the lock nut (15.67 to 17.33)." */
function setBeforeText({ set, low, high }: SetBeforeLock): string {
  return `Set ${two(set)} lbf·ft before the lock nut (${two(low)} to ${two(high)} leads to the target).`;
}

/** What the shop has learnt of the lock nut. */
function riseText({ rise: { mean, counted, outliers, doubtful } }: SetBeforeLock): string {
  const adds = `The lock nut adds ${two(mean.value)} lbf·ft (${two(mean.low)} to ${two(mean.high)})`;
  const from =
    counted === 0 ? "by the shop's settings" : `learnt from ${counted} earlier ${counted === 1 ? "job" : "jobs"}`;
  const odd = outliers.length === 0 ? "" : ` ${outliers.length} that do not belong to the others were left out.`;
  if (doubtful) return `${adds}, by the shop's settings: what earlier jobs say is too far apart to go by.`;
  return `${adds}, ${from}.${odd}`;
}

const two = (value: number): string => String(roundTo(value, 2));

const FIELD_WORDS: Readonly<Record<string, string>> = {
  readings: SHEET.readings,
  breakaway: SHEET.breakaway,
  why: SHEET.why,
  skipWhy: SHEET.skipWhy,
  note: SHEET.note,
  needles: SHEET.needles,
  boostPsi: SHEET.foundBoost,
  serial: SHEET.foundSerial,
  unitFamily: SHEET.foundFamily,
  parts: SHEET.condition,
  "tries.slip": SHEET.trySlip,
  "tries.nutDegrees": SHEET.tryNut,
  "tries.shimMm": SHEET.tryShim,
  "tries.reached": SHEET.tryReached,
  "tool.kind": SHEET.toolKind,
  "tool.accuracyPercent": SHEET.toolAccuracy,
  "tool.resolution": SHEET.toolResolution,
  "tool.k": SHEET.toolK,
};

export const STANDING_WORDS: Readonly<Record<StepStanding["standing"], string>> = {
  open: "To do",
  "needs-why": "Needs a reason",
  done: "Done",
  skipped: "Skipped",
};

/** What a step that is not done still wants. */
export const BECAUSE_WORDS: Readonly<Record<OpenBecause, string>> = {
  "nothing-written": "Nothing is written down yet.",
  "too-few-readings": "More readings are wanted.",
  "click-tool": "A click wrench proves nothing here: read the final slip with a digital one.",
  "slip-over-band": "The slip is over the band: set it again.",
  "slip-under-band": "The slip is under the band: set it again.",
  "slip-not-proved": "The readings do not prove the slip: read again, or say why it is left so.",
  "no-target": "The plan has no target: say what was aimed for and why.",
  "parts-not-judged": "Some parts are not judged yet.",
  "needles-not-known": "It is not known how many came out: say why.",
  "needles-differ": "The count is not what it should be: count again, or say why.",
};

/** Two versions of one step. */
export const CLASH = {
  title: (step: string) => `Two entries for: ${step}`,
  says: "Somebody else wrote this step after you had opened it. Both are here: choose one. Nothing of theirs is erased, whatever you choose.",
  mine: "Mine",
  theirs: "Theirs",
  keepMine: "Keep mine",
  keepTheirs: "Keep theirs",
} as const;

/** What the script says of entries that are not with the shop yet. */
export const UNSENT = {
  pending: "Kept on this device, not sent yet",
  kept: "Kept on this device. It is sent when the network is back.",
  sent: "All entries are with the shop.",
  clash: "Somebody else wrote this step meanwhile. Choose which to keep.",
  refused: (why: string) => `Kept on this device. ${why}`,
  again: "Send it again",
  drop: "Drop it from this device",
  otherWriter: (name: string) => `Written by ${name}. Sign in as ${name} to send it, or take it over as yours.`,
  sendAsMine: "Send as mine",
  leaveFor: (name: string) => `Leave it for ${name}`,
  signIn: "Kept on this device. Sign in again to send it.",
} as const;

/** The big keys. */
export const PAD = {
  title: "Keys",
  erase: "Erase",
  next: "Next",
  point: "Point",
} as const;
