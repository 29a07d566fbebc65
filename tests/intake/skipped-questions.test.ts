import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { RememberedService } from "#shared/craft/vocabulary.ts";
import { step } from "#shared/intake/conversation.ts";
import type { Draft } from "#shared/intake/draft.ts";
import { NEVER } from "#tests/support/a-craft.ts";
import { bearingOf, ids, NOW, POOLS } from "#tests/support/answer-pools.ts";

const everything = fc.record(
  Object.fromEntries(ids(POOLS).map((id) => [id, fc.constantFrom<unknown>(...POOLS[id])])),
) as fc.Arbitrary<Draft>;

/** Finished conversations, without the answers that they did not ask for. */
const finished = everything.map((answers) => step(answers, NOW)).filter(({ next }) => next === null);

const SKIPPABLE = ["boost", "changedSinceSlip", "lastSlipSet", "washersAgain"] as const;

/** The answers that can be true to a question which was not asked. */
function trueAnswers(id: (typeof SKIPPABLE)[number], draft: Draft): readonly unknown[] {
  const nothingModified = draft.engineModified === "no" && draft.chargerModified === "no";
  if (id === "changedSinceSlip" && nothingModified) return ["no"];
  if (id === "lastSlipSet") return [NEVER, ...POOLS.lastSlipSet.filter((slip) => isLater(slip, draft))];
  if (id === "washersAgain") return [draft.washers];
  return POOLS[id];
}

/** Neither before the rebuild nor after now; and hours of today are hours of now. */
function isLater({ when, date, engineHours }: RememberedService, { engineHours: now, lastRebuild }: Draft): boolean {
  if (when !== "known") return true;
  const isToday = date === NOW.onDate || lastRebuild?.date === NOW.onDate;
  if (isToday && engineHours !== null && engineHours !== now) return false;
  if (lastRebuild?.date && date !== null && date < lastRebuild.date) return false;
  return engineHours === null || ((lastRebuild?.engineHours ?? 0) <= engineHours && engineHours <= (now ?? Infinity));
}

describe("a question that was not asked", () => {
  it("could not have changed verdict, due, slip, parts or bench time", () => {
    fc.assert(
      fc.property(finished, fc.constantFrom(...SKIPPABLE), ({ draft }, id) => {
        fc.pre(!(id in draft));
        for (const answer of trueAnswers(id, draft)) {
          const answered = { ...draft, [id]: answer };
          expect(bearingOf(answered), `${id}: ${JSON.stringify(answer)}`).toBe(bearingOf(draft));
        }
      }),
      { numRuns: Number(process.env["RUNS"] ?? 1500) },
    );
  }, 60_000);

  it("is one of four: all others are always asked", () => {
    const skipped = new Set<string>();
    for (const { draft } of fc.sample(finished, 3000)) {
      for (const id of ids(POOLS)) if (!(id in draft)) skipped.add(id);
    }
    expect([...skipped].sort()).toEqual([...SKIPPABLE].sort());
  });
});
