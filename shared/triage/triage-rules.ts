import { DEFAULT, PRACTICE, type Source } from "#shared/basics/source.ts";
import type { HoursSpan } from "#shared/life/hours-span.ts";
import type { Findings } from "#shared/triage/findings.ts";
import { settingSource } from "#shared/triage/triage-settings.ts";
import type { Verdict } from "#shared/triage/verdict.ts";

/** One line of the table: when it holds, what follows, and how it is said to the owner. */
export type TriageRule = {
  readonly id: string;
  readonly outcome: Verdict;
  readonly when: (it: Findings) => boolean;
  readonly says: (it: Findings) => string;
  /** Of a rule with several numbers, the source of the one that held. */
  readonly source: Source | ((it: Findings) => Source);
};

/** Every rule that holds is a reason; the worst outcome among them is the verdict. Worst first. */
export const TRIAGE_RULES: readonly TriageRule[] = [
  {
    id: "metal-in-oil",
    outcome: "stop-riding",
    when: (it) => it.symptoms.includes("metal-in-oil"),
    says: () => "There is metal in the oil. A part has started to break up.",
    source: PRACTICE,
  },
  {
    id: "grinding",
    outcome: "stop-riding",
    when: (it) => it.symptoms.includes("grinding"),
    says: () => "You hear grinding. A bearing or gear tooth may have failed.",
    source: PRACTICE,
  },
  {
    id: "sudden-boost-loss",
    outcome: "stop-riding",
    when: (it) => it.symptoms.includes("sudden-boost-loss"),
    says: () => "Boost dropped out at once. The drive gear or a washer may have broken.",
    source: PRACTICE,
  },
  {
    id: "impeller-wobble",
    outcome: "stop-riding",
    when: (it) => it.symptoms.includes("impeller-wobble"),
    says: () => "The impeller wobbles or rubs. A ball bearing is failing.",
    source: PRACTICE,
  },
  {
    id: "ceramic-with-symptom",
    outcome: "stop-riding",
    when: (it) => it.ceramic && it.symptoms.length > 0,
    says: () => "The washers are ceramic, or may be, and something is wrong. Ceramic washers break into pieces.",
    source: PRACTICE,
  },
  {
    id: "limp-with-fading-boost",
    outcome: "stop-riding",
    when: (it) => it.symptoms.includes("limp-mode") && it.symptoms.includes("gradual-boost-loss"),
    says: () => "The engine is in limp mode and boost is fading. Together they point at the charger.",
    source: DEFAULT,
  },
  {
    id: "ceramic-washers",
    outcome: "full-rebuild",
    when: (it) => it.ceramic && it.symptoms.length === 0,
    says: () => "The washers are ceramic, or may be. They should be replaced as soon as you can, at any age.",
    source: PRACTICE,
  },
  {
    id: "rebuild-months",
    outcome: "full-rebuild",
    when: (it) => it.rebuildBy === null || it.onDate >= it.rebuildBy,
    says: (it) =>
      it.rebuildBy === null
        ? `Nobody knows how old the last rebuild is. We take it as over ${it.settings.rebuildMonths} months.`
        : `${it.settings.rebuildMonths} months since it was last rebuilt, or new, were up on ${it.rebuildBy}.`,
    source: (it) => settingSource(it.settings, "rebuildMonths"),
  },
  {
    id: "rebuild-hours",
    outcome: "full-rebuild",
    when: (it) => it.sinceRebuild.most >= it.settings.rebuildHours,
    says: (it) =>
      `${hasRun(it.sinceRebuild)} since it was rebuilt, or new. The limit is ${it.settings.rebuildHours} h.`,
    source: (it) => settingSource(it.settings, "rebuildHours"),
  },
  {
    id: "whine",
    outcome: "full-rebuild",
    when: (it) => it.symptoms.includes("whine"),
    says: () => "A new whine means worn bearings or gear.",
    source: DEFAULT,
  },
  {
    id: "oil-in-intake",
    outcome: "full-rebuild",
    when: (it) => it.symptoms.includes("oil-in-intake"),
    says: () => "Oil in the intake means the shaft seal or a bearing lets oil past.",
    source: DEFAULT,
  },
  {
    id: "burnt-smell",
    outcome: "full-rebuild",
    when: (it) => it.symptoms.includes("burnt-smell"),
    says: () => "A burnt smell means the clutch slips and runs hot.",
    source: DEFAULT,
  },
  {
    id: "slip-will-not-hold",
    outcome: "full-rebuild",
    when: (it) => it.symptoms.includes("gradual-boost-loss") && mayBeFreshlySet(it),
    says: (it) =>
      `Boost is fading, and the slip may have been set less than ${it.settings.willNotHoldHours} h ago. It does not hold.`,
    source: (it) => settingSource(it.settings, "willNotHoldHours"),
  },
  {
    id: "slip-hours",
    outcome: "slip-check",
    when: (it) => it.sinceSlipSet.most >= it.slipInterval,
    says: (it) =>
      `${hasRun(it.sinceSlipSet)} since the slip was set. The limit for this craft is ${it.slipInterval} h.`,
    source: (it) => settingSource(it.settings, it.slipIntervalSetting),
  },
  {
    id: "changed-since-slip",
    outcome: "slip-check",
    when: (it) => it.changedSinceSlip,
    says: () => "The craft was changed after the slip was set, or may have been. The old setting no longer fits.",
    source: DEFAULT,
  },
  {
    id: "fading-boost",
    outcome: "slip-check",
    when: (it) => it.symptoms.includes("gradual-boost-loss") && !mayBeFreshlySet(it),
    says: () => "Boost and top speed fade slowly. The washers are worn and the slip is low.",
    source: PRACTICE,
  },
  {
    id: "limp-mode",
    outcome: "slip-check",
    when: (it) => it.symptoms.includes("limp-mode") && !it.symptoms.includes("gradual-boost-loss"),
    says: () => "The engine is in limp mode. The charger is one of the things that can cause it.",
    source: DEFAULT,
  },
];

/** Said where no rule holds. */
export const NOTHING_DUE: TriageRule = {
  id: "nothing-due",
  outcome: "not-due",
  when: () => true,
  says: () => "Nothing that you told us asks for service now.",
  source: DEFAULT,
};

const mayBeFreshlySet = (it: Findings): boolean => it.sinceSlipSet.least < it.settings.willNotHoldHours;

function hasRun({ least, most }: HoursSpan): string {
  if (most === Infinity) return "Nobody knows how long it has run";
  return least === most ? `It has run ${Math.floor(most)} h` : `It may have run ${Math.floor(most)} h`;
}
