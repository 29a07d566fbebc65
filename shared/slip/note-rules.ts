import { DEFAULT, PRACTICE } from "#shared/basics/source.ts";
import type { SlipRule } from "#shared/slip/slip-rule.ts";

/** A rule that sets no target but says how the work is done or what to mind. */
export type NoteRule = SlipRule<
  | "charger-not-confirmed"
  | "engine-not-confirmed"
  | "lock-nut-raises-slip"
  | "shims-set-slip"
  | "unit-not-known"
  | "over-is-not-fine"
> & { readonly caution?: string };

/** Each rule that holds is shown. */
export const NOTE_RULES: readonly NoteRule[] = [
  {
    id: "charger-not-confirmed",
    when: (it) => it.mods.charger === null,
    text: "Charger may be modified: taken as standard, since too much slip breaks gears.",
    caution: "It is not known whether the charger is modified. Confirm it before the final set.",
    source: DEFAULT,
  },
  {
    id: "engine-not-confirmed",
    when: (it) => it.mods.engine === null,
    text: "Engine may be modified: taken as standard, since too much slip breaks gears.",
    caution: "It is not known whether the engine is modified. Confirm it before the final set.",
    source: DEFAULT,
  },
  {
    id: "lock-nut-raises-slip",
    when: (it) => it.unitFamily === "set-nut",
    text: "Set-nut unit: the lock nut raises the slip as it is tightened, so set it that much lower first.",
    caution: "Never tighten the set nut home. It locks the gear solid, and the gear or the shaft breaks.",
    source: PRACTICE,
  },
  {
    id: "shims-set-slip",
    when: (it) => it.unitFamily === "shim-stack",
    text: "Shim-stack unit: the set nut is tightened home, and shims are added until the slip is right.",
    source: PRACTICE,
  },
  {
    id: "unit-not-known",
    when: (it) => it.unitFamily === "unknown",
    text: "Unit not known: no setting before the lock nut is given.",
    caution: "Find out how the unit is built before you touch the set nut. On a set-nut unit, never tighten it home.",
    source: DEFAULT,
  },
  {
    id: "over-is-not-fine",
    when: () => true,
    text: "The final slip may end a little under the target, not over it.",
    caution: "A little under the target is fine. Over is not: too much slip breaks the gear or the shaft.",
    source: PRACTICE,
  },
];
