import { describe, expect, it } from "vitest";
import { AnswersSchema } from "#shared/craft/answers-schema.ts";
import { aCraft, done, FORGOTTEN, modified } from "#tests/support/a-craft.ts";

const pathsRefused = (answers: unknown) =>
  AnswersSchema.safeParse(answers).error?.issues.map(({ path }) => path.join(".")) ?? [];

describe("answers", () => {
  it("are taken as they are", () => {
    const craft = aCraft({ lastRebuild: done("2027-01-15", 12.5), symptoms: ["whine", "grinding"], notLooked: true });
    expect(AnswersSchema.parse(craft)).toEqual(craft);
  });

  it("may leave out what is then not known, or no", () => {
    const { notLooked: _, ...craft } = aCraft();
    const brief = { ...craft, mods: { engine: false, charger: false }, lastRebuild: { when: "never" } };
    expect(AnswersSchema.parse(brief)).toEqual(aCraft());
  });

  it("may be not sure of every number, date and yes or no", () => {
    const unsure = aCraft({
      builtYear: null,
      engineHours: null,
      mods: { engine: null, charger: null, boostPsi: null, changedSinceSlip: null },
      lastRebuild: done(null, null),
      lastSlipSet: FORGOTTEN,
    });
    expect(AnswersSchema.parse(unsure)).toEqual(unsure);
  });

  it.each<[string, object, readonly string[]]>([
    ["a field nobody asked for", { ...aCraft(), colour: "red" }, [""]],
    ["an unknown symptom", { ...aCraft(), symptoms: ["hiccups"] }, ["symptoms.0"]],
    ["more symptoms than there are", { ...aCraft(), symptoms: Array(10).fill("whine") }, ["symptoms"]],
    ["negative hours", aCraft({ engineHours: -1 }), ["engineHours"]],
    ["hours that no engine has", aCraft({ engineHours: 20_001 }), ["engineHours"]],
    ["a year and a half", aCraft({ builtYear: 2016.5 }), ["builtYear"]],
    ["a boost that no charger makes", aCraft({ mods: modified({ boostPsi: 61 }) }), ["mods.boostPsi"]],
    ["a day that does not exist", aCraft({ lastRebuild: done("2027-02-29", 10) }), ["lastRebuild.date"]],
    [
      "a date and hours of a service that never was",
      aCraft({ lastSlipSet: { ...done("2027-01-01", 10), when: "never" } }),
      ["lastSlipSet.date", "lastSlipSet.engineHours"],
    ],
  ])("are refused with %s, by the field", (_because, answers, paths) => {
    expect(pathsRefused(answers)).toEqual(paths);
  });
});
