import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { QuestionId } from "#shared/intake/draft.ts";
import { fieldsFor } from "#shared/intake/form-fields.ts";
import { QUESTIONS, questionOf } from "#shared/intake/questions.ts";
import { readAnswer } from "#shared/intake/read-answer.ts";
import { done, NEVER, ON_DATE } from "#tests/support/a-craft.ts";
import { ids, POOLS } from "#tests/support/answer-pools.ts";
import { anyFields, asSent } from "#tests/support/form-arbitraries.ts";

describe("the fields of a form, filled with an answer", () => {
  it.each<[QuestionId, NonNullable<unknown> | null, object]>([
    ["riding", "hard", { choice: "hard" }],
    ["engineHours", 212.5, { value: "212.5" }],
    ["engineHours", null, { notSure: "yes" }],
    ["boost", { value: 1.1, unit: "bar" }, { value: "1.1", unit: "bar" }],
    ["boost", null, { notSure: "yes" }],
    ["symptoms", { noticed: ["whine"], notLooked: true }, { choice: ["whine"], notLooked: "yes" }],
    ["symptoms", { noticed: [], notLooked: false }, { choice: [], nothing: "yes" }],
    ["symptoms", { noticed: [], notLooked: true }, { choice: [], notLooked: "yes" }],
    ["lastRebuild", NEVER, { when: "never" }],
    [
      "lastRebuild",
      { ...done("2027-01-15", 120), slipLeftAt: 13 },
      { when: "known", date: "2027-01-15", hours: "120", leftAt: "13" },
    ],
  ])("%s: %j", (id, answer, fields) => {
    expect(fieldsFor(questionOf(id)!, answer)).toEqual(fields);
  });

  it("are read as that same answer: every answer that a form can give", () => {
    const given = fc
      .tuple(fc.constantFrom(...QUESTIONS), anyFields)
      .map(([question, sent]) => ({ question, outcome: readAnswer(question, sent, {}, ON_DATE) }))
      .filter(({ outcome }) => outcome.ok);
    fc.assert(
      fc.property(given, ({ question, outcome }) => {
        const filled = outcome.ok ? asSent(fieldsFor(question, outcome.value)) : {};
        expect(readAnswer(question, filled, {}, ON_DATE)).toEqual(outcome);
      }),
      { numRuns: 1000 },
    );
  });

  it("are read as that same answer: a few of every kind", () => {
    for (const id of ids(POOLS)) {
      for (const answer of POOLS[id]) {
        const again = readAnswer(questionOf(id)!, asSent(fieldsFor(questionOf(id)!, answer)), {}, ON_DATE);
        expect(again).toEqual({ ok: true, value: answer });
      }
    }
  });
});
