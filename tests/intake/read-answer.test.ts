import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { AnswersSchema } from "#shared/craft/answers-schema.ts";
import { answered } from "#shared/intake/conversation.ts";
import { answersFrom, type Draft, type QuestionId } from "#shared/intake/draft.ts";
import { DraftSchema } from "#shared/intake/draft-schema.ts";
import { QUESTIONS, questionOf } from "#shared/intake/questions.ts";
import { FIELD, readAnswer } from "#shared/intake/read-answer.ts";
import { ON_DATE } from "#tests/support/a-craft.ts";
import { NOW } from "#tests/support/answer-pools.ts";
import { anyFields, asSent } from "#tests/support/form-arbitraries.ts";

const read = (id: QuestionId, fields: Record<string, string | readonly string[]>, before: Draft = {}) =>
  readAnswer(questionOf(id)!, asSent(fields), before, ON_DATE);
const accepted = (value: unknown) => ({ ok: true, value });
const refused = (refusal: object) => ({ ok: false, refusal });

describe("a number", () => {
  it.each([
    ["212", 212],
    ["212.5", 212.5],
    ["212,5", 212.5],
    [" 212 ", 212],
    ["1 200", 1200],
    ["1\u00a0200,5", 1200.5],
    [".5", 0.5],
    ["212.", 212],
    ["0", 0],
    ["20000", 20_000],
  ])("is read as people type it: %j", (value, hours) => {
    expect(read("engineHours", { value })).toEqual(accepted(hours));
  });

  it.each(["", " ", "abc", "-1", "1e3", "1,200", "1.200", "1.2.3", "12 h", ".", "٣", "0x10", "Infinity", "NaN"])(
    "is not guessed from %j",
    (value) => {
      expect(read("engineHours", { value })).toEqual(refused({ field: "value", problem: "not-a-number" }));
    },
  );

  it("stays in its range, and says which", () => {
    expect(read("engineHours", { value: "20000.01" })).toEqual(
      refused({ field: "value", problem: "out-of-range", least: 0, most: 20_000 }),
    );
  });

  it("may be not sure, whatever else was typed", () => {
    expect(read("engineHours", { value: "abc", notSure: "yes" })).toEqual(accepted(null));
  });
});

describe("the year built", () => {
  it.each([
    ["2016", accepted(2016)],
    ["2028", accepted(2028)],
    ["2029", refused({ field: "value", problem: "out-of-range", least: 1985, most: 2028 })],
    ["1984", refused({ field: "value", problem: "out-of-range", least: 1985, most: 2028 })],
    ["2016.5", refused({ field: "value", problem: "not-a-number" })],
    ["16", refused({ field: "value", problem: "out-of-range", least: 1985, most: 2028 })],
  ])("is at most next year's model: %s", (value, outcome) => {
    expect(read("builtYear", { value })).toEqual(outcome);
  });
});

// Limits are 1 to 60 psi (default of this project); 1 psi = 6.894 757 kPa (NIST SP 811, Appendix B.8).
describe("boost", () => {
  it.each([
    ["psi", "1", "60", "0.99", "60.01"],
    ["kPa", "6.9", "413.68", "6.89", "413.69"],
    ["bar", "0.07", "4.13", "0.06", "4.14"],
  ])("in %s is kept in that unit, from %s to %s", (unit, least, most, tooLittle, tooMuch) => {
    expect(read("boost", { value: least, unit })).toEqual(accepted({ value: Number(least), unit }));
    expect(read("boost", { value: most, unit })).toEqual(accepted({ value: Number(most), unit }));
    const outOfRange = { field: "value", problem: "out-of-range", least: Number(least), most: Number(most) };
    expect(read("boost", { value: tooLittle, unit })).toEqual(refused(outOfRange));
    expect(read("boost", { value: tooMuch, unit })).toEqual(refused(outOfRange));
  });

  it("takes a comma, and more decimals than hours have", () => {
    expect(read("boost", { value: "1,034", unit: "bar" })).toEqual(accepted({ value: 1.034, unit: "bar" }));
  });

  it("needs its unit, or not sure", () => {
    expect(read("boost", { value: "10" })).toEqual(refused({ field: "unit", problem: "choose-one" }));
    expect(read("boost", { value: "10", unit: "atm" })).toEqual(refused({ field: "unit", problem: "choose-one" }));
    expect(read("boost", { notSure: "yes" })).toEqual(accepted(null));
  });
});

describe("a service", () => {
  const known = { when: "known", date: "2027-01-15", hours: "120,5", leftAt: "13" };

  it("is read with its date, hours and slip, each of which may be left empty", () => {
    expect(read("lastRebuild", known)).toEqual(
      accepted({ when: "known", date: "2027-01-15", engineHours: 120.5, slipLeftAt: 13 }),
    );
    expect(read("lastRebuild", { when: "known", date: " ", hours: "" })).toEqual(
      accepted({ when: "known", date: null, engineHours: null, slipLeftAt: null }),
    );
  });

  it.each(["never", "unknown"])("that is %s has neither", (when) => {
    expect(read("lastRebuild", { ...known, when })).toEqual(
      accepted({ when, date: null, engineHours: null, slipLeftAt: null }),
    );
  });

  it("is known where its date or hours are typed and nothing is chosen", () => {
    expect(read("lastSlipSet", { hours: "12" })).toEqual(
      accepted({ when: "known", date: null, engineHours: 12, slipLeftAt: null }),
    );
    expect(read("lastSlipSet", {})).toEqual(refused({ field: "when", problem: "choose-one" }));
  });

  it.each([
    ["2027-02-31", "not-a-date"],
    ["2027-02-29", "not-a-date"],
    ["2027-13-01", "not-a-date"],
    ["1/2/2027", "not-a-date"],
    ["0027-01-01", "not-a-date"],
    ["2027-5-1", "not-a-date"],
  ])("has a date that exists: not %s", (date, problem) => {
    expect(read("lastRebuild", { ...known, date })).toEqual(refused({ field: "date", problem }));
  });

  it("lies not in the future, by the shop's day", () => {
    expect(read("lastRebuild", { ...known, date: "2027-05-02" })).toEqual(
      refused({ field: "date", problem: "in-the-future", today: ON_DATE }),
    );
    expect(read("lastRebuild", { ...known, date: ON_DATE }).ok).toBe(true);
  });

  it("lies not at more hours than the engine has now, and the field is named", () => {
    const now = { engineHours: 120 };
    expect(read("lastRebuild", known, now)).toEqual(refused({ field: "hours", problem: "more-than-now", now: 120 }));
    expect(read("lastRebuild", { ...known, hours: "120" }, now).ok).toBe(true);
    expect(read("lastRebuild", known, { engineHours: null }).ok).toBe(true);
  });

  it("was left at a slip that such a clutch can have", () => {
    expect(read("lastRebuild", { ...known, leftAt: "61" })).toEqual(
      refused({ field: "leftAt", problem: "out-of-range", least: 0, most: 60 }),
    );
  });
});

describe("a choice", () => {
  it("is one of those offered", () => {
    expect(read("riding", { choice: "hard" })).toEqual(accepted("hard"));
    for (const choice of ["", "fast", "constructor", "__proto__"]) {
      expect(read("riding", { choice })).toEqual(refused({ field: "choice", problem: "choose-one" }));
    }
  });

  it("of symptoms is several, none twice, in the order of the list", () => {
    expect(read("symptoms", { choice: ["whine", "grinding", "whine", "hiccups"] })).toEqual(
      accepted({ noticed: ["grinding", "whine"], notLooked: false }),
    );
  });

  it("of no symptom is said, or that nobody looked", () => {
    expect(read("symptoms", {})).toEqual(refused({ field: "choice", problem: "choose-one" }));
    expect(read("symptoms", { nothing: "yes" })).toEqual(accepted({ noticed: [], notLooked: false }));
    expect(read("symptoms", { notLooked: "yes" })).toEqual(accepted({ noticed: [], notLooked: true }));
    expect(read("symptoms", { nothing: "yes", choice: "whine" })).toEqual(
      accepted({ noticed: ["whine"], notLooked: false }),
    );
  });
});

describe("whatever a form sends", () => {
  const anyQuestion = fc.constantFrom(...QUESTIONS);

  it("is read or refused by a field of the form, never thrown at", () => {
    const names: readonly string[] = Object.values(FIELD);
    fc.assert(
      fc.property(anyQuestion, anyFields, (question, fields) => {
        const outcome = readAnswer(question, fields, {}, ON_DATE);
        if (!outcome.ok) expect(names).toContain(outcome.refusal.field);
      }),
      { numRuns: 5000 },
    );
  });

  it("is read as an answer that storage, triage and the JSON interface take", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(anyQuestion, anyFields), { maxLength: 15 }), (forms) => {
        let draft: Draft = {};
        for (const [question, fields] of forms) {
          const outcome = readAnswer(question, fields, draft, ON_DATE);
          if (outcome.ok) draft = answered(draft, question.id, outcome.value, NOW).draft;
        }
        expect(DraftSchema.parse(JSON.parse(JSON.stringify(draft)))).toEqual(draft);
        expect(AnswersSchema.safeParse(answersFrom(draft)).error).toBeUndefined();
      }),
      { numRuns: 2000 },
    );
  });
});
