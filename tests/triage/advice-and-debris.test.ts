import { describe, expect, it } from "vitest";
import type { Answers, Symptom } from "#shared/craft/vocabulary.ts";
import { ADVICE_RULES } from "#shared/triage/advice-rules.ts";
import { judge } from "#shared/triage/judge.ts";
import { TRIAGE_DEFAULTS } from "#shared/triage/triage-settings.ts";
import { aCraft, ON_DATE } from "#tests/support/a-craft.ts";

const judged = (craft: Partial<Answers>) => judge(aCraft(craft), ON_DATE, TRIAGE_DEFAULTS);

describe("advice", () => {
  it.each<[string, Partial<Answers>, readonly string[]]>([
    ["whine", { symptoms: ["whine"] }, ["do-not-ride-until-seen"]],
    ["burnt smell", { symptoms: ["burnt-smell"] }, ["do-not-ride-until-seen"]],
    ["oil in the intake", { symptoms: ["oil-in-intake"] }, ["do-not-ride-until-seen"]],
    ["limp mode: have the engine's own fault read first", { symptoms: ["limp-mode"] }, ["read-the-engine-fault-first"]],
    ["not looked: look at the oil before the next ride", { notLooked: true }, ["look-at-the-oil"]],
    ["nothing noticed", {}, []],
    [
      "all of it",
      { symptoms: ["whine", "limp-mode"], notLooked: true },
      ["do-not-ride-until-seen", "read-the-engine-fault-first", "look-at-the-oil"],
    ],
  ])("%s", (_because, craft, advice) => {
    expect(judged(craft).advice.map(({ rule }) => rule)).toEqual(advice);
  });

  it("changes no verdict: not having looked leaves everything else as it was", () => {
    const { advice: _, ...looked } = judged({ symptoms: ["gradual-boost-loss"] });
    const { advice: __, ...notLooked } = judged({ symptoms: ["gradual-boost-loss"], notLooked: true });
    expect(notLooked).toEqual(looked);
  });

  it("names its source and speaks in whole sentences", () => {
    for (const { says, source } of ADVICE_RULES) {
      expect(says).toMatch(/^[A-Z].+\.$/);
      expect(source.kind).toBe("default");
    }
  });
});

const ceramic = { unitFamily: "shim-stack", builtYear: 2009, washers: "ceramic" } as const;
const maybeCeramic = { ...ceramic, washers: "unknown" } as const;

// Common practice, no published source: what each failure throws into the engine.
describe("engine debris", () => {
  it.each<[string, readonly Symptom[], Partial<Answers>, string]>([
    ["metal in the oil", ["metal-in-oil"], {}, "likely"],
    ["metal in the oil, with a wobble", ["metal-in-oil", "impeller-wobble"], {}, "likely"],
    ["sudden loss of boost with grinding: the gear", ["sudden-boost-loss", "grinding"], {}, "likely"],
    ["sudden loss of boost by itself", ["sudden-boost-loss"], {}, "possible"],
    ["grinding by itself", ["grinding"], {}, "possible"],
    ["ceramic washers, gradual loss of boost", ["gradual-boost-loss"], ceramic, "likely"],
    ["ceramic washers, sudden loss of boost", ["sudden-boost-loss"], ceramic, "likely"],
    ["washers that may be ceramic, gradual loss of boost", ["gradual-boost-loss"], maybeCeramic, "likely"],
    ["ceramic washers, another symptom", ["whine"], ceramic, "possible"],
    ["a wobble alone stays in the charger", ["impeller-wobble"], {}, "unlikely"],
    ["a wobble alone, ceramic washers", ["impeller-wobble"], ceramic, "unlikely"],
    ["a wobble with another symptom", ["impeller-wobble", "whine"], {}, "possible"],
    ["limp mode and fading boost", ["limp-mode", "gradual-boost-loss"], {}, "possible"],
    ["milder than stop-riding: whine", ["whine"], {}, "unlikely"],
    ["milder than stop-riding: ceramic, no symptom", [], ceramic, "unlikely"],
    ["nothing noticed", [], {}, "unlikely"],
  ])("%s", (_because, symptoms, craft, expected) => {
    expect(judged({ ...craft, symptoms }).engineDebris).toBe(expected);
  });
});
