import { FROM_MEMORY, PRACTICE, published, type Source } from "#shared/basics/source.ts";
import type { Verdict } from "#shared/triage/verdict.ts";

/** Signal words after ANSI Z535.6 and ISO 3864-2. */
export type SignalWord = "DANGER" | "WARNING" | "CAUTION" | "NOTICE";

export type Caution = {
  readonly id: string;
  readonly signal: SignalWord;
  readonly text: string;
  readonly source: Source;
  readonly when: readonly Verdict[];
  /** False = about taking the unit off and posting it, which is over once the shop has it. */
  readonly onceOffTheCraft: boolean;
};

const EVERY: readonly Verdict[] = ["not-due", "slip-check", "full-rebuild", "stop-riding"];
const TAKEN_OFF: readonly Verdict[] = ["slip-check", "full-rebuild", "stop-riding"];

/** Shown with the verdict and printed on the tag, worst first. */
export const CAUTIONS: readonly Caution[] = [
  {
    id: "petrol-vapour",
    signal: "WARNING",
    text: "Petrol vapour can explode. Air the engine space before you work. Keep flames and sparks away.",
    source: published("33 CFR 183.610(f): run the blower for 4 minutes and check for vapour"),
    when: TAKEN_OFF,
    onceOffTheCraft: true,
  },
  {
    id: "carbon-monoxide",
    signal: "WARNING",
    text: "Exhaust gas can kill. Never run the engine in a closed space.",
    source: published("Centers for Disease Control and Prevention, carbon monoxide and boating"),
    when: EVERY,
    onceOffTheCraft: true,
  },
  {
    id: "tow-slowly",
    signal: "WARNING",
    text: "Do not run the engine. Tow slowly and as the maker's manual says, since fast towing can flood it. Keep to local rules and wear a life jacket.",
    source: FROM_MEMORY,
    when: ["stop-riding"],
    onceOffTheCraft: false,
  },
  {
    id: "cannot-start",
    signal: "WARNING",
    text: "Before you work: engine off, safety lanyard out, battery negative off.",
    source: FROM_MEMORY,
    when: TAKEN_OFF,
    onceOffTheCraft: true,
  },
  {
    id: "hot-and-heavy",
    signal: "CAUTION",
    text: "Let hot parts cool. Lift with help.",
    source: FROM_MEMORY,
    when: TAKEN_OFF,
    onceOffTheCraft: true,
  },
  {
    id: "charger-off",
    signal: "NOTICE",
    text: "With the charger off, never start the engine. Plug its oil feed, drain and air openings. Refit with new seals and oil as the manual says.",
    source: FROM_MEMORY,
    when: TAKEN_OFF,
    onceOffTheCraft: true,
  },
  {
    id: "drain-and-bag",
    signal: "NOTICE",
    text: "Drain and bag the unit before you post it. A part that smells of fuel may not be mailed. Carriers differ. Take old oil where local rules say.",
    source: published("USPS Publication 52, 343 and 451; other carriers have their own rules"),
    when: TAKEN_OFF,
    onceOffTheCraft: false,
  },
  {
    id: "maintenance-free",
    signal: "NOTICE",
    text: "“Maintenance free” on a label is no reason to skip service.",
    source: PRACTICE,
    when: EVERY,
    onceOffTheCraft: true,
  },
];

export const cautionsFor = (verdict: Verdict): readonly Caution[] =>
  CAUTIONS.filter((caution) => caution.when.includes(verdict));

/** Under every verdict. */
export const ADVICE_ONLY =
  "This is advice, not a certificate that the craft is safe. Where the maker's manual, local boating law or a licensed marine technician say otherwise, follow them.";
