import type { Answers } from "#shared/craft/vocabulary.ts";
import { hoursNow, latestDayFor } from "#shared/life/hours-now.ts";
import { serviceUnknowns, type Unknown } from "#shared/triage/mildest-services.ts";
import type { TriageSettings } from "#shared/triage/triage-settings.ts";

/** Every single unknown of the answers, in the order of their fields. */
export function unknownsOf(answers: Answers, onDate: string, settings: TriageSettings): readonly Unknown[] {
  const { mods } = answers;
  const withMods = (change: Partial<Answers["mods"]>): readonly Answers[] => [
    { ...answers, mods: { ...mods, ...change } },
  ];
  const found: Unknown[] = [];
  const add = (isUnknown: boolean, answer: string, fillings: () => readonly Answers[]) => {
    if (isUnknown) found.push({ answer, fillings: fillings() });
  };
  add(answers.unitFamily === "unknown", "unitFamily", () => [{ ...answers, unitFamily: "set-nut" }]);
  add(answers.builtYear === null, "builtYear", () =>
    years(answers, onDate, settings).map((builtYear) => ({ ...answers, builtYear })),
  );
  add(answers.engineHours === null, "engineHours", () =>
    hours(answers, onDate, settings).map((engineHours) => ({ ...answers, engineHours })),
  );
  add(answers.riding === "unknown", "riding", () => [{ ...answers, riding: "easy" }]);
  add(mods.engine === null, "mods.engine", () => withMods({ engine: false }));
  add(mods.charger === null, "mods.charger", () => withMods({ charger: false }));
  add(mods.changedSinceSlip === null, "mods.changedSinceSlip", () => withMods({ changedSinceSlip: false }));
  add(answers.washers === "unknown", "washers", () => [{ ...answers, washers: "metal" }]);
  return [
    ...found,
    ...serviceUnknowns("lastRebuild", answers, onDate, settings),
    ...serviceUnknowns("lastSlipSet", answers, onDate, settings),
  ];
}

const yearOf = (date: string): number => Number(date.slice(0, 4));

/** The newest year that the dates of the services allow, and the newest in which the hours at them can be ridden. */
function years({ lastRebuild, lastSlipSet }: Answers, onDate: string, settings: TriageSettings): readonly number[] {
  const dates = [onDate, lastRebuild.date, lastSlipSet.date].filter((date) => date !== null);
  const newest = Math.min(...dates.map(yearOf));
  const hoursAtServices = Math.max(lastRebuild.engineHours ?? 0, lastSlipSet.engineHours ?? 0);
  return [newest, Math.min(newest, yearOf(latestDayFor(hoursAtServices, onDate, settings.hoursPerYear)))];
}

/** Few hours are mildest, but boost that fades is milder once the slip is out of its first hours: both. */
function hours(answers: Answers, onDate: string, settings: TriageSettings): readonly number[] {
  const { least, most } = hoursNow(answers, onDate, settings.hoursPerYear);
  const set = [answers.lastRebuild.engineHours ?? 0, answers.lastSlipSet.engineHours ?? 0];
  return [least, ...set.map((at) => Math.min(most, Math.max(least, at + settings.willNotHoldHours)))];
}
