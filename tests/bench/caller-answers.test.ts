import * as fc from "fast-check";
import { expect, it } from "vitest";
import { SYMPTOMS, type Symptom } from "#shared/craft/vocabulary.ts";
import type { Draft } from "#shared/intake/draft.ts";
import { type Circumstances, QUESTIONS, type Question } from "#shared/intake/questions.ts";
import { readCallerAnswers } from "#src/bench/caller/caller-answers.ts";
import { filledFrom } from "#src/bench/caller/caller-fields.ts";

const NOW: Circumstances = { onDate: "2027-05-01", ceramicUntilYear: 2010 };

const noticed = fc.record({
  noticed: fc.subarray<Symptom>([...SYMPTOMS]),
  notLooked: fc.boolean(),
});

/** Engine hours of services stay under those of now, as they do in life. */
const service = fc.oneof(
  fc.constantFrom("never", "unknown").map((when) => ({ when, date: null, engineHours: null, slipLeftAt: null })),
  fc.record({
    when: fc.constant("known"),
    date: fc.option(fc.constantFrom("2020-02-29", "2026-12-31", "2027-05-01")),
    engineHours: fc.option(fc.integer({ min: 0, max: 5000 }).map((hundredths) => hundredths / 100)),
    slipLeftAt: fc.option(fc.integer({ min: 0, max: 600 }).map((tenths) => tenths / 10)),
  }),
);

function answerTo({ id, answer }: Question): fc.Arbitrary<unknown> {
  switch (answer.kind) {
    case "several":
      return noticed;
    case "one":
      return fc.constantFrom(...answer.options);
    case "number":
      return fc.option(id === "builtYear" ? fc.integer({ min: 1985, max: 2028 }) : fc.integer({ min: 50, max: 900 }));
    case "measure":
      return fc.option(
        fc.constantFrom({ value: 18.5, unit: "psi" }, { value: 120, unit: "kPa" }, { value: 1.1, unit: "bar" }),
      );
    case "service":
      return service;
  }
}

/** All that a caller may have said: an answer to each question that applies. */
const drafts: fc.Arbitrary<Draft> = fc.tuple(...QUESTIONS.map(answerTo)).map((answers) => {
  const draft: Draft = {};
  for (const [index, question] of QUESTIONS.entries()) {
    if (question.applies(draft, NOW)) Object.assign(draft, { [question.id]: answers[index] });
  }
  return draft;
});

it("takes down every call as it was said: the filled-in form reads back as the same answers", () => {
  fc.assert(
    fc.property(drafts, (draft) => {
      expect(readCallerAnswers(filledFrom(draft), NOW)).toEqual({ ok: true, value: draft });
    }),
  );
});

it("passes over what does not apply, whatever was typed there", () => {
  fc.assert(
    fc.property(drafts, (draft) => {
      const typed = { ...filledFrom(draft), ...(draft.boost === undefined && { "boost.value": ["lots"] }) };
      expect(readCallerAnswers(typed, NOW)).toEqual({ ok: true, value: draft });
    }),
  );
});

it("asks only for the symptoms and the lists where a form is empty: the rest is not sure", () => {
  const read = readCallerAnswers({}, NOW);
  const asked = read.ok ? [] : read.refusal.map(({ question, problem }) => `${question.id}.${problem.field}`);
  expect(asked).toContain("symptoms.choice");
  expect(asked).not.toContain("builtYear.value");
  expect(asked).not.toContain("engineHours.value");
});
