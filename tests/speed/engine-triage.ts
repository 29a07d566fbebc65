import { Engine, type RuleProperties } from "json-rules-engine";
import type { Answers } from "#shared/craft/vocabulary.ts";
import { findingsOf } from "#shared/triage/findings.ts";
import { NOTHING_DUE, TRIAGE_RULES } from "#shared/triage/triage-rules.ts";
import { TRIAGE_DEFAULTS } from "#shared/triage/triage-settings.ts";

/*
 * The same rules for a general-purpose rules library, for scale: it reads them as data, works asynchronously and keeps
 * account of every condition. The findings are handed to it, so only the rules themselves are its work.
 */

const shows = (symptom: string) => ({ fact: "symptoms", operator: "contains", value: symptom });
const lacks = (symptom: string) => ({ fact: "symptoms", operator: "doesNotContain", value: symptom });
const is = (fact: string, value: boolean | number = true) => ({ fact, operator: "equal", value });
const atLeast = (fact: string, value: number | { fact: string }) => ({
  fact,
  operator: "greaterThanInclusive",
  value,
});
const below = (fact: string, value: number) => ({ fact, operator: "lessThan", value });

const { rebuildHours, willNotHoldHours } = TRIAGE_DEFAULTS;
const NONE_NOTICED = is("symptomCount", 0);

/** By the ids of our own table. */
const CONDITIONS: Readonly<Record<string, readonly object[]>> = {
  "metal-in-oil": [shows("metal-in-oil")],
  grinding: [shows("grinding")],
  "sudden-boost-loss": [shows("sudden-boost-loss")],
  "impeller-wobble": [shows("impeller-wobble")],
  "ceramic-with-symptom": [is("ceramic"), atLeast("symptomCount", 1)],
  "limp-with-fading-boost": [shows("limp-mode"), shows("gradual-boost-loss")],
  "ceramic-washers": [is("ceramic"), NONE_NOTICED],
  "rebuild-months": [is("monthsAreUp")],
  "rebuild-hours": [atLeast("mostSinceRebuild", rebuildHours)],
  whine: [shows("whine")],
  "oil-in-intake": [shows("oil-in-intake")],
  "burnt-smell": [shows("burnt-smell")],
  "slip-will-not-hold": [shows("gradual-boost-loss"), below("leastSinceSlipSet", willNotHoldHours)],
  "slip-hours": [atLeast("mostSinceSlipSet", { fact: "slipInterval" })],
  "changed-since-slip": [is("changedSinceSlip")],
  "fading-boost": [shows("gradual-boost-loss"), atLeast("leastSinceSlipSet", willNotHoldHours)],
  "limp-mode": [shows("limp-mode"), lacks("gradual-boost-loss")],
};

/** Answers to the ids of the rules that held, worst first. */
export function engineTriage(): (answers: Answers, onDate: string) => Promise<readonly string[]> {
  const engine = new Engine(
    TRIAGE_RULES.map(({ id }): RuleProperties => {
      const all = CONDITIONS[id];
      if (all === undefined) throw new Error(`The rule ${id} is not told to the library.`);
      return { conditions: { all: all as [] }, event: { type: id } };
    }),
  );
  const order = new Map(TRIAGE_RULES.map(({ id }, index) => [id, index]));
  return async (answers, onDate) => {
    const { events } = await engine.run(factsOf(answers, onDate));
    const held = events.map(({ type }) => type).sort((one, other) => (order.get(one) ?? 0) - (order.get(other) ?? 0));
    return held.length > 0 ? held : [NOTHING_DUE.id];
  };
}

function factsOf(answers: Answers, onDate: string) {
  const it = findingsOf(answers, onDate, TRIAGE_DEFAULTS);
  return {
    symptoms: answers.symptoms,
    symptomCount: it.symptoms.length,
    ceramic: it.ceramic,
    monthsAreUp: it.rebuildBy === null || it.onDate >= it.rebuildBy,
    mostSinceRebuild: it.sinceRebuild.most,
    leastSinceSlipSet: it.sinceSlipSet.least,
    mostSinceSlipSet: it.sinceSlipSet.most,
    slipInterval: it.slipInterval,
    changedSinceSlip: it.changedSinceSlip,
  };
}
