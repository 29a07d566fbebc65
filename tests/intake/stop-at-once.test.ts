import { describe, expect, it } from "vitest";
import { SYMPTOMS } from "#shared/craft/vocabulary.ts";
import { stopAtOnce } from "#shared/intake/stop-at-once.ts";
import { judge } from "#shared/triage/judge.ts";
import { TRIAGE_DEFAULTS } from "#shared/triage/triage-settings.ts";
import { aCraft } from "#tests/support/a-craft.ts";

describe("being told to stop before the conversation is over", () => {
  it.each(SYMPTOMS)("agrees with the rules where %s is all that is wrong", (symptom) => {
    const { verdict } = judge(aCraft({ symptoms: [symptom], washers: "metal" }), "2027-05-01", TRIAGE_DEFAULTS);
    expect(stopAtOnce({ symptoms: { noticed: [symptom], notLooked: false } })).toBe(verdict === "stop-riding");
  });

  it("needs a symptom", () => {
    expect(stopAtOnce({})).toBe(false);
    expect(stopAtOnce({ symptoms: { noticed: [], notLooked: true } })).toBe(false);
  });
});
