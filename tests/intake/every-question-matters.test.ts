import * as fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { step } from "#shared/intake/conversation.ts";
import type { Draft, QuestionId } from "#shared/intake/draft.ts";
import { bearingOf, ids, NOW, POOLS } from "#tests/support/answer-pools.ts";

const ORDER = ids(POOLS);
const everything = fc.record(
  Object.fromEntries(ORDER.map((id) => [id, fc.constantFrom<unknown>(...POOLS[id])])),
) as fc.Arbitrary<Draft>;

/** Ways in which a conversation may go on; a sample, kept so that every question is tried against the same ones. */
let COMPLETIONS: readonly Draft[] = [];
beforeAll(() => {
  COMPLETIONS = fc.sample(everything, 600);
});

const laterThan = (id: QuestionId, draft: Draft): Draft =>
  Object.fromEntries(ORDER.slice(ORDER.indexOf(id) + 1).map((later) => [later, draft[later]]));

/** The finished conversation, without what it did not ask; null where an answer is at odds with another. */
function finished(draft: Draft): Draft | null {
  const { draft: kept, next } = step(draft, NOW);
  return next === null ? kept : null;
}

/** Is there a way to go on from here in which another answer to this question changes what follows? */
function canMatter(before: Draft, id: QuestionId): boolean {
  return COMPLETIONS.some((completion) => {
    const rest = laterThan(id, completion);
    const ends = POOLS[id].map((answer) => finished({ ...before, [id]: answer, ...rest })).filter((it) => it !== null);
    return ends.some((end) => bearingOf(end) !== bearingOf(ends[0]!));
  });
}

/** Walks one path, answer by answer, and tells which of the questions it was asked could not have mattered. */
function idleQuestions(answers: Draft): readonly string[] {
  const idle: string[] = [];
  let draft: Draft = {};
  for (let { next } = step(draft, NOW); next !== null; { next } = step(draft, NOW)) {
    if (!canMatter(draft, next.id)) idle.push(`${next.id} after ${JSON.stringify(draft)}`);
    const answered = step({ ...draft, [next.id]: answers[next.id] }, NOW).draft;
    if (answered[next.id] === undefined) break; // at odds with an earlier answer: asked again
    draft = answered;
  }
  return idle;
}

describe("every question that is asked", () => {
  it("can still change verdict, due, slip, parts or bench time, on every path", () => {
    fc.assert(
      fc.property(everything, (answers) => {
        expect(idleQuestions(answers)).toEqual([]);
      }),
      // Each try is many conversations: what failed is told at once, not made smaller first.
      { numRuns: Number(process.env["RUNS"] ?? 300), endOnFailure: true },
    );
  }, 120_000);
});
