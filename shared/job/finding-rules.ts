import { DEFAULT, PRACTICE, type Source } from "#shared/basics/source.ts";
import type { BenchEvidence, PartFound } from "#shared/job/bench-evidence.ts";
import { INSPECTED_PARTS, type InspectedPart } from "#shared/job/sheet-entry.ts";
import type { EngineDebris } from "#shared/triage/engine-debris.ts";
import { settingSource } from "#shared/triage/triage-settings.ts";
import type { Verdict } from "#shared/triage/verdict.ts";

/** One line of the table: when it holds, what follows for engine and unit, and how it is said to the owner. */
export type FindingRule = {
  readonly id: string;
  readonly outcome: { readonly engineDebris: EngineDebris; readonly verdict: Verdict };
  readonly when: (it: BenchEvidence) => boolean;
  readonly says: (it: BenchEvidence) => string;
  readonly source: Source | ((it: BenchEvidence) => Source);
};

/** On the side of the engine's oil: what breaks off here has a way in. */
const THROWN_IN: readonly InspectedPart[] = ["drive-gear", "shaft", "friction-washers", "needle-bearings"];
/** A ball bearing usually stays in the charger; of these nothing is known. */
const MAY_BE_THROWN_IN: readonly InspectedPart[] = ["retaining-plate", "housing", "impeller"];
/** Of which a broken one lets parts into the engine, or may. */
const OPEN_TO_ENGINE: readonly InspectedPart[] = [...THROWN_IN, "spring-washers", ...MAY_BE_THROWN_IN];

/** Every rule that holds is a reason; the worst outcomes among them count. Worst first. */
export const FINDING_RULES: readonly FindingRule[] = [
  {
    id: "needles-missing",
    outcome: { engineDebris: "likely", verdict: "stop-riding" },
    when: ({ needles }) => isLess(needles.counted, needles.belong),
    says: ({ needles }) =>
      `${needles.counted} needle bearings were in the unit; ${needles.belong} belong there. The rest has likely gone into the engine.`,
    source: PRACTICE,
  },
  {
    id: "broken-and-thrown-in",
    outcome: { engineDebris: "likely", verdict: "stop-riding" },
    when: (it) => found(it, THROWN_IN, "broken").length > 0,
    says: (it) => `Broken: ${named(found(it, THROWN_IN, "broken"))}. Pieces have likely gone into the engine.`,
    source: PRACTICE,
  },
  {
    id: "spring-washer-broken",
    outcome: { engineDebris: "likely", verdict: "stop-riding" },
    when: (it) => it.parts["spring-washers"] === "broken",
    says: () => "A spring washer is broken. It sits by the gear, so a piece has likely gone into the engine.",
    source: DEFAULT,
  },
  {
    id: "broken-and-perhaps-thrown-in",
    outcome: { engineDebris: "possible", verdict: "stop-riding" },
    when: (it) => found(it, MAY_BE_THROWN_IN, "broken").length > 0,
    says: (it) => `Broken: ${named(found(it, MAY_BE_THROWN_IN, "broken"))}. Pieces may have gone into the engine.`,
    source: DEFAULT,
  },
  {
    id: "needle-count-unknown",
    outcome: { engineDebris: "possible", verdict: "stop-riding" },
    when: (it) => it.opened && isCountUnknown(it),
    says: () => "The needle bearings are not counted, or nobody knows how many belong there. One may be missing.",
    source: DEFAULT,
  },
  {
    id: "needles-too-many",
    outcome: { engineDebris: "possible", verdict: "stop-riding" },
    when: ({ needles }) => isLess(needles.belong, needles.counted),
    says: ({ needles }) =>
      `${needles.counted} needle bearings were counted where ${needles.belong} belong. The count cannot be trusted.`,
    source: DEFAULT,
  },
  {
    id: "not-looked-at-yet",
    outcome: { engineDebris: "possible", verdict: "stop-riding" },
    when: (it) => it.opened && found(it, OPEN_TO_ENGINE, "unseen").length > 0,
    says: (it) =>
      `Not looked at yet: ${named(found(it, OPEN_TO_ENGINE, "unseen"))}. It counts as the worst until then.`,
    source: DEFAULT,
  },
  {
    id: "slip-nearly-gone",
    outcome: { engineDebris: "possible", verdict: "stop-riding" },
    when: (it) => isLess(it.slip, it.band && it.band.low / 2) && it.parts["friction-washers"] === "unseen",
    says: () => "The clutch slips at less than half of what it should. A friction washer may be broken.",
    source: DEFAULT,
  },
  {
    id: "ball-bearing-broken",
    outcome: { engineDebris: "unlikely", verdict: "stop-riding" },
    when: (it) => it.parts["ball-bearings"] === "broken",
    says: () => "A ball bearing is broken. Its pieces usually stay in the charger; impeller and housing suffer.",
    source: PRACTICE,
  },
  {
    id: "ball-bearings-not-looked-at-yet",
    outcome: { engineDebris: "unlikely", verdict: "stop-riding" },
    when: (it) => it.opened && it.parts["ball-bearings"] === "unseen",
    says: () => "The ball bearings are not looked at yet. They count as broken until then.",
    source: DEFAULT,
  },
  {
    id: "slip-over-ceiling",
    outcome: { engineDebris: "unlikely", verdict: "stop-riding" },
    when: (it) => isLess(it.ceiling, it.slip) && !(isWhole(it.parts["drive-gear"]) && isWhole(it.parts.shaft)),
    says: (it) => `The slip was over ${it.ceiling} lbf·ft. That breaks gear or shaft, so both are looked at first.`,
    source: PRACTICE,
  },
  {
    id: "worn",
    outcome: { engineDebris: "unlikely", verdict: "full-rebuild" },
    when: (it) => found(it, INSPECTED_PARTS, "worn").length > 0,
    says: (it) => `Worn: ${named(found(it, INSPECTED_PARTS, "worn"))}. Setting the slip would not hold for long.`,
    source: PRACTICE,
  },
  {
    id: "seals",
    outcome: { engineDebris: "unlikely", verdict: "full-rebuild" },
    when: (it) => it.parts.seals === "broken" || (it.opened && it.parts.seals === "unseen"),
    says: (it) =>
      it.parts.seals === "broken" ? "A seal is broken and lets oil past." : "The seals are not looked at yet.",
    source: DEFAULT,
  },
  {
    id: "slip-did-not-hold",
    outcome: { engineDebris: "unlikely", verdict: "full-rebuild" },
    when: (it) => it.hoursSinceSlipSet < it.triage.willNotHoldHours && mayBeLow(it),
    says: (it) =>
      `The slip is low, or may be, less than ${it.triage.willNotHoldHours} h after it may have been set. Set again, it would not hold.`,
    source: (it) => settingSource(it.triage, "willNotHoldHours"),
  },
];

/** Said where no rule holds. */
export const NOTHING_FOUND: FindingRule = {
  id: "nothing-found",
  outcome: { engineDebris: "unlikely", verdict: "not-due" },
  when: ({ opened }) => opened,
  says: () => "Nothing in the unit was found broken, worn or missing.",
  source: PRACTICE,
};

/** Said while the unit is closed. */
export const NOT_OPENED: FindingRule = {
  id: "not-opened",
  outcome: { engineDebris: "unlikely", verdict: "not-due" },
  when: ({ opened }) => !opened,
  says: () => "The unit is not open yet. What your answers said still stands.",
  source: DEFAULT,
};

const found = ({ parts }: BenchEvidence, among: readonly InspectedPart[], as: PartFound): readonly InspectedPart[] =>
  among.filter((part) => parts[part] === as);

/** @example named(["drive-gear", "shaft"]) // "drive gear, shaft" */
const named = (parts: readonly InspectedPart[]): string => parts.map((part) => part.replaceAll("-", " ")).join(", ");

const isLess = (one: number | null, other: number | null): boolean => one !== null && other !== null && one < other;

const isWhole = (found: PartFound): boolean => found === "good" || found === "worn";

/**
 * Where the shop has not said how many needles belong in the family, those found are taken as all of them, but only by
 * somebody who looked at the set and called it whole.
 */
const isCountUnknown = ({ needles, parts }: BenchEvidence): boolean =>
  needles.counted === null || (needles.belong === null && !isWhole(parts["needle-bearings"]));

/** Once a unit is open its as-found slip can be read no more: what was not read may have been anything. */
const mayBeLow = ({ slip, band, opened }: BenchEvidence): boolean =>
  slip === null || band === null ? opened : slip < band.low;
