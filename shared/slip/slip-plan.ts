import type { UnitFamily } from "#shared/craft/vocabulary.ts";
import { beforeLock } from "#shared/slip/before-lock.ts";
import { CHARGER_RULES, type ChargerRule } from "#shared/slip/charger-rules.ts";
import { NOTE_RULES, type NoteRule } from "#shared/slip/note-rules.ts";
import { firstMatch, type SlipAim, type SlipCraft, type SlipFacts } from "#shared/slip/slip-rule.ts";
import type { SlipSettings } from "#shared/slip/slip-settings.ts";
import { STANDARD_RULES, type StandardRule } from "#shared/slip/standard-rules.ts";
import { roundTo } from "#shared/units/round-to.ts";
import { lbfft, newtonMetres, type Torque, torqueIn } from "#shared/units/torque.ts";

export type SlipRuleId = (StandardRule | ChargerRule | NoteRule)["id"];

/** What the bench will set. `null` where the shop must measure or ask before a number can be given. */
export type SlipPlan = {
  readonly target: Torque<"lbf.ft"> | null;
  readonly targetSI: Torque<"N.m"> | null;
  /** Limits of the final slip, lbf·ft. */
  readonly band: { readonly low: number; readonly high: number } | null;
  readonly setBeforeLock: Torque<"lbf.ft"> | null;
  readonly basis: readonly SlipRuleId[];
  readonly cautions: readonly string[];
};

/** Hundredths of a lbf·ft, thousandths of a N·m: finer than any tool reads, and no float's tail is shown. */
const LBFFT_DECIMALS = 2;
const NM_DECIMALS = 3;

/**
 * The slip to set on a craft: target, band, and the setting before the lock nut.
 * @example slipPlan({ unitFamily: "set-nut", riding: "hard", mods: { engine: true, charger: true, boostPsi: 20 } },
 *   SLIP_DEFAULTS) // target 18 lbf.ft, band 17.5 to 18.1, setBeforeLock 16.5 lbf.ft
 */
export function slipPlan(craft: SlipCraft, settings: SlipSettings): SlipPlan {
  const facts: SlipFacts = { ...craft, settings, ceiling: ceilingOf(craft.unitFamily, settings) };
  const deciding = decidingRules(facts);
  const notes = NOTE_RULES.filter(({ when }) => when(facts));
  return {
    ...numbers(deciding.aim, facts),
    basis: [...deciding.rules, ...notes].map(({ id }) => id),
    cautions: [...deciding.rules, ...notes].flatMap((rule) => ("caution" in rule ? [rule.caution] : [])),
  };
}

type Deciding = { readonly aim: SlipAim | null; readonly rules: readonly (StandardRule | ChargerRule)[] };

function decidingRules(facts: SlipFacts): Deciding {
  const standard = firstMatch(STANDARD_RULES, facts);
  const standardAim = standard.aim(facts.settings);
  if (facts.mods.charger !== true) return { aim: standardAim, rules: [standard] };
  const charger = firstMatch(CHARGER_RULES, facts);
  const aim = charger.aim(facts);
  return aim === "standard" ? { aim: standardAim, rules: [charger, standard] } : { aim, rules: [charger] };
}

function numbers(aim: SlipAim | null, { unitFamily, settings }: SlipFacts): Omit<SlipPlan, "basis" | "cautions"> {
  if (aim === null) return { target: null, targetSI: null, band: null, setBeforeLock: null };
  const target = lbfft(roundTo(aim.target, LBFFT_DECIMALS));
  const setBeforeLock = lbfft(roundTo(beforeLock(target, lbfft(settings.lockNutRise)).value, LBFFT_DECIMALS));
  return {
    target,
    targetSI: newtonMetres(roundTo(torqueIn("N.m", target), NM_DECIMALS)),
    band: { low: roundTo(aim.low, LBFFT_DECIMALS), high: roundTo(aim.high, LBFFT_DECIMALS) },
    setBeforeLock: unitFamily === "set-nut" ? setBeforeLock : null,
  };
}

/** The most slip that a unit of this family is ever given, lbf·ft. */
export function ceilingOf(unitFamily: UnitFamily, settings: SlipSettings): number {
  const ceilings: Record<UnitFamily, number> = {
    "set-nut": settings.ceilingSetNut,
    "shim-stack": settings.ceilingShimStack,
    unknown: settings.ceilingUnknown,
  };
  return ceilings[unitFamily];
}
