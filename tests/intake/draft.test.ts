import * as fc from "fast-check";
import { describe, expect, expectTypeOf, it } from "vitest";
import type * as z from "zod";
import type { AnswersSchema } from "#shared/craft/answers-schema.ts";
import type { Answers } from "#shared/craft/vocabulary.ts";
import { answersFrom, type Draft, draftFrom } from "#shared/intake/draft.ts";
import { DraftSchema } from "#shared/intake/draft-schema.ts";
import { done, FORGOTTEN } from "#tests/support/a-craft.ts";
import { ids, POOLS } from "#tests/support/answer-pools.ts";

const anyDraft = fc.record(Object.fromEntries(ids(POOLS).map((id) => [id, fc.constantFrom<unknown>(...POOLS[id])])), {
  requiredKeys: [],
}) as fc.Arbitrary<Draft>;

describe("a draft", () => {
  it("is, for the compiler, what its schema reads: no key more or less, no value wider", () => {
    expectTypeOf<z.infer<typeof DraftSchema>>().toExtend<Draft>();
    expectTypeOf<Draft>().toExtend<z.infer<typeof DraftSchema>>();
    expectTypeOf<keyof z.infer<typeof DraftSchema>>().toEqualTypeOf<keyof Draft>();
    expectTypeOf<z.infer<typeof AnswersSchema>>().toExtend<Answers>();
    expect(Object.keys(DraftSchema.shape)).toEqual(ids(POOLS));
  });

  it("is made of answers again, which it reads back as they were", () => {
    fc.assert(
      fc.property(anyDraft, (draft) => {
        const answers = answersFrom(draft);
        expect(answersFrom(draftFrom(answers))).toEqual(answers);
        expect(DraftSchema.safeParse(draftFrom(answers)).success).toBe(true);
      }),
    );
  });

  it("survives storage as JSON", () => {
    fc.assert(
      fc.property(anyDraft, (draft) => {
        expect(DraftSchema.parse(JSON.parse(JSON.stringify(draft)))).toEqual(draft);
      }),
    );
  });

  it.each<[string, object]>([
    ["an unknown question", { colour: "red" }],
    ["an unknown choice", { riding: "fast" }],
    ["a year out of range", { builtYear: 1884 }],
    ["a boost without unit", { boost: { value: 10 } }],
    ["a symptom that is none", { symptoms: { noticed: ["hiccups"], notLooked: false } }],
    ["hours of a service that never was", { lastRebuild: { ...FORGOTTEN, engineHours: 10 } }],
    ["a day that does not exist", { lastRebuild: done("2027-02-30", 10) }],
    ["an answer that is not there", { riding: undefined }],
  ])("is refused with %s", (_because, draft) => {
    expect(DraftSchema.safeParse(draft).success).toBe(false);
  });

  it("is read as answers: what was not answered is not known, but a change since the slip was set", () => {
    expect(answersFrom({})).toEqual({
      unitFamily: "unknown",
      builtYear: null,
      engineHours: null,
      riding: "unknown",
      mods: { engine: null, charger: null, boostPsi: null, changedSinceSlip: false },
      lastRebuild: FORGOTTEN,
      lastSlipSet: FORGOTTEN,
      washers: "unknown",
      symptoms: [],
      notLooked: false,
    });
  });

  it("is read with boost in psi and the second answer on washers", () => {
    const answers = answersFrom({
      chargerModified: "yes",
      boost: { value: 1, unit: "bar" },
      engineModified: "no",
      changedSinceSlip: "unknown",
      washers: "ceramic",
      washersAgain: "metal",
    });
    // 1 bar = 100 kPa, 1 psi = 6.894 757 kPa: NIST SP 811 (2008), Appendix B.8.
    expect(answers.mods).toEqual({
      engine: false,
      charger: true,
      boostPsi: expect.closeTo(100 / 6.894757, 5),
      changedSinceSlip: null,
    });
    expect(answers.washers).toBe("metal");
  });
});
