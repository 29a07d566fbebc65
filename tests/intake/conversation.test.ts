import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { answered, step } from "#shared/intake/conversation.ts";
import type { Draft, QuestionId } from "#shared/intake/draft.ts";
import { QUESTIONS, questionOf } from "#shared/intake/questions.ts";
import { done, NEVER } from "#tests/support/a-craft.ts";
import { ids, NOW, POOLS } from "#tests/support/answer-pools.ts";

/** A whole conversation of the dull kind. */
const DULL: Draft = {
  symptoms: { noticed: [], notLooked: false },
  unitFamily: "set-nut",
  builtYear: 2026,
  engineHours: 40,
  riding: "easy",
  engineModified: "no",
  chargerModified: "no",
  lastRebuild: NEVER,
  lastSlipSet: NEVER,
  washers: "metal",
};

const anyAnswers = fc.record(Object.fromEntries(ids(POOLS).map((id) => [id, fc.constantFrom<unknown>(...POOLS[id])])), {
  requiredKeys: [],
}) as fc.Arbitrary<Draft>;
const anyQuestion = fc.constantFrom(...ids(POOLS));

const nextAfter = (draft: Draft): QuestionId | undefined => step(draft, NOW).next?.id;

describe("the conversation", () => {
  it("asks the dull craft ten questions, in their order, and ends", () => {
    const asked: string[] = [];
    let draft: Draft = {};
    for (let { next } = step(draft, NOW); next !== null; { next } = step(draft, NOW)) {
      asked.push(next.id);
      draft = step({ ...draft, [next.id]: DULL[next.id] }, NOW).draft;
    }
    expect(asked).toEqual(ids(DULL));
    expect(draft).toEqual(DULL);
  });

  it("has one question for each answer of a draft", () => {
    expect(QUESTIONS.map(({ id }) => id)).toEqual(ids(POOLS));
    for (const question of QUESTIONS) expect(questionOf(question.id)).toBe(question);
    expect(questionOf("contact")).toBeUndefined();
  });

  it.each<[string, Draft, QuestionId, unknown, QuestionId | undefined]>([
    ["boost, only of a charger that is modified", DULL, "chargerModified", "yes", "boost"],
    [
      "a change since the slip was set, once anything may be modified",
      DULL,
      "engineModified",
      "unknown",
      "changedSinceSlip",
    ],
    [
      "not so where a symptom asks for as much anyway",
      { ...DULL, symptoms: POOLS.symptoms[2]! },
      "engineModified",
      "yes",
      undefined,
    ],
    ["ceramic washers again, where they are not plausible", DULL, "washers", "ceramic", "washersAgain"],
    [
      "not again in a shim-stack unit of 2010, never rebuilt",
      { ...DULL, unitFamily: "shim-stack", builtYear: 2010 },
      "washers",
      "ceramic",
      undefined,
    ],
  ])("asks for %s", (_because, draft, id, answer, next) => {
    expect(answered(draft, id, answer, NOW).next?.id).toBe(next);
  });

  it("does not ask for a slip setting that can have changed nothing since the rebuild", () => {
    const { lastSlipSet: _, ...before } = DULL;
    expect(nextAfter({ ...before, lastRebuild: done("2027-01-01", 30) })).toBe("lastSlipSet");
    expect(nextAfter({ ...before, lastRebuild: done("2027-04-30", null) })).toBe("lastSlipSet");
    expect(nextAfter({ ...before, lastRebuild: done("2027-01-01", 40) })).toBeUndefined();
    expect(nextAfter({ ...before, lastRebuild: done(NOW.onDate, null) })).toBeUndefined();
    expect(nextAfter({ ...before, engineHours: 0 })).toBeUndefined();
  });
});

describe("ceramic washers where they are not plausible", () => {
  const named = answered(DULL, "washers", "ceramic", NOW);

  it("are asked back once, then believed", () => {
    expect(named.next?.id).toBe("washersAgain");
    const insisted = answered(named.draft, "washersAgain", "ceramic", NOW);
    expect(insisted.next).toBeNull();
    expect(answered(insisted.draft, "washers", "ceramic", NOW).next).toBeNull();
  });

  it("are not asked back where the owner is not sure, or says metal", () => {
    expect(answered(DULL, "washers", "unknown", NOW).next).toBeNull();
    expect(answered(DULL, "washers", "metal", NOW).next).toBeNull();
  });

  it("are asked back anew where they are named anew after the second answer said otherwise", () => {
    const corrected = answered(named.draft, "washersAgain", "metal", NOW);
    expect(corrected.next).toBeNull();
    expect(answered(corrected.draft, "washers", "ceramic", NOW).next?.id).toBe("washersAgain");
    expect(answered(corrected.draft, "riding", "hard", NOW).draft.washersAgain).toBe("metal");
  });

  it("lose the second answer where the first is no longer ceramic, or has become plausible", () => {
    const insisted = answered(named.draft, "washersAgain", "ceramic", NOW).draft;
    expect(step({ ...insisted, washers: "metal" }, NOW)).toMatchObject({ dropped: ["washersAgain"], next: null });
    const early = step({ ...insisted, unitFamily: "shim-stack", builtYear: 2010 }, NOW);
    expect(early.dropped).toEqual(["washersAgain"]);
    expect(early.draft.washers).toBe("ceramic");
  });
});

describe("changing an early answer", () => {
  it("drops what no longer applies, names it, and keeps the rest", () => {
    const boosted: Draft = {
      ...DULL,
      chargerModified: "yes",
      boost: { value: 1.1, unit: "bar" },
      changedSinceSlip: "no",
    };
    expect(step(boosted, NOW).dropped).toEqual([]);
    const changed = answered(boosted, "chargerModified", "no", NOW);
    expect(changed.dropped).toEqual(["boost", "changedSinceSlip"]);
    expect(changed.draft).toEqual(DULL);
  });

  it("drops services at more hours than the engine has now, and asks for them again", () => {
    const serviced: Draft = { ...DULL, lastRebuild: done("2027-01-01", 30), lastSlipSet: done("2027-02-01", 35) };
    const changed = answered(serviced, "engineHours", 32, NOW);
    expect(changed.dropped).toEqual(["lastSlipSet"]);
    expect(changed.next?.id).toBe("lastSlipSet");
    expect(answered(serviced, "engineHours", 20, NOW).dropped).toEqual(["lastRebuild", "lastSlipSet"]);
    expect(answered(serviced, "engineHours", null, NOW).dropped).toEqual([]);
  });

  it("keeps every answer that still applies, as it was, and drops no other than those it names", () => {
    fc.assert(
      fc.property(anyAnswers, anyQuestion, fc.nat(), (answers, id, pick) => {
        const before = step(answers, NOW).draft;
        const answer = POOLS[id][pick % POOLS[id].length];
        const { draft, dropped } = answered(before, id, answer, NOW);
        for (const other of ids(before)) {
          if (other === id) continue;
          const isReplaced = id === "washers" && other === "washersAgain";
          if (other in draft) expect(draft[other]).toEqual(before[other]);
          else if (!isReplaced) expect(dropped).toContain(other);
        }
        for (const gone of dropped) expect(draft).not.toHaveProperty(gone);
      }),
      { numRuns: 3000 },
    );
  });
});

describe("step", () => {
  it("changes nothing when taken again", () => {
    fc.assert(
      fc.property(anyAnswers, (answers) => {
        const once = step(answers, NOW);
        expect(step(once.draft, NOW)).toEqual({ ...once, dropped: [] });
      }),
      { numRuns: 3000 },
    );
  });

  it("asks next what applies and is not answered", () => {
    fc.assert(
      fc.property(anyAnswers, (answers) => {
        const { draft, next } = step(answers, NOW);
        if (next === null) return;
        expect(draft).not.toHaveProperty(next.id);
        expect(next.applies(draft, NOW)).toBe(true);
      }),
    );
  });

  it("leaves the answers it was given alone", () => {
    fc.assert(
      fc.property(anyAnswers, (answers) => {
        const before = structuredClone(answers);
        step(answers, NOW);
        expect(answers).toEqual(before);
      }),
    );
  });
});
