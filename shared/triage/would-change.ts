import type { Answers, RememberedService } from "#shared/craft/vocabulary.ts";
import { judge } from "#shared/triage/judge.ts";
import type { TriageSettings } from "#shared/triage/triage-settings.ts";
import { isMilder, type Verdict } from "#shared/triage/verdict.ts";
import { plusDays, yearsBetween } from "#shared/units/calendar-date.ts";

/** One answer the owner could still find out, and the mildest verdict it could lead to. */
export type WouldChange = { readonly answer: string; readonly to: Verdict };

/**
 * Each single unknown whose best plausible value gives a milder verdict, all else as answered.
 * Names are the fields of {@link Answers}, dotted where nested: `lastRebuild`, `lastRebuild.date`, `mods.engine`.
 */
export function wouldChange(answers: Answers, onDate: string, settings: TriageSettings): readonly WouldChange[] {
  const now = judge(answers, onDate, settings).verdict;
  if (now === "not-due") return [];
  return unknownsOf(answers, onDate, settings).flatMap(({ answer, fillings }) => {
    const to = mildest(fillings.map((filled) => judge(filled, onDate, settings).verdict));
    return to !== undefined && isMilder(to, now) ? [{ answer, to }] : [];
  });
}

/** An unknown, and the answers with it filled in: the values among which the mildest verdict is sure to be. */
type Unknown = { readonly answer: string; readonly fillings: readonly Answers[] };

function unknownsOf(answers: Answers, onDate: string, settings: TriageSettings): readonly Unknown[] {
  const { mods, lastRebuild, lastSlipSet } = answers;
  const found: Unknown[] = [];
  const add = (isUnknown: boolean, answer: string, fillings: () => readonly Answers[]) => {
    if (isUnknown) found.push({ answer, fillings: fillings() });
  };
  const withMods = (change: Partial<Answers["mods"]>): Answers => ({ ...answers, mods: { ...mods, ...change } });
  add(answers.unitFamily === "unknown", "unitFamily", () => [{ ...answers, unitFamily: "set-nut" }]);
  add(answers.builtYear === null, "builtYear", () => [{ ...answers, builtYear: newestYear(answers, onDate) }]);
  add(answers.engineHours === null, "engineHours", () =>
    hoursNow(answers, onDate, settings).map((engineHours) => ({ ...answers, engineHours })),
  );
  add(answers.riding === "unknown", "riding", () => [{ ...answers, riding: "easy" }]);
  add(mods.engine === null, "mods.engine", () => [withMods({ engine: false })]);
  add(mods.charger === null, "mods.charger", () => [withMods({ charger: false })]);
  add(mods.changedSinceSlip === null, "mods.changedSinceSlip", () => [withMods({ changedSinceSlip: false })]);
  add(answers.washers === "unknown", "washers", () => [{ ...answers, washers: "metal" }]);
  for (const [answer, service] of Object.entries({ lastRebuild, lastSlipSet })) {
    const set = (filled: RememberedService): Answers => ({ ...answers, [answer]: filled });
    const hours = () => hoursAtService(service, answers, onDate, settings);
    add(service.when === "unknown", answer, () => [
      set(NEVER),
      ...hours().map((engineHours) =>
        set({ ...service, when: "known", date: dateFor(engineHours, answers, onDate, settings), engineHours }),
      ),
    ]);
    if (service.when !== "known") continue;
    add(service.date === null, `${answer}.date`, () => [
      set({ ...service, date: dateFor(service.engineHours, answers, onDate, settings) }),
    ]);
    add(service.engineHours === null, `${answer}.engineHours`, () =>
      hours().map((engineHours) => set({ ...service, engineHours })),
    );
  }
  return found;
}

const NEVER: RememberedService = { when: "never", date: null, engineHours: null, slipLeftAt: null };

/** The newest year that the dates of the services allow. */
function newestYear({ lastRebuild, lastSlipSet }: Answers, onDate: string): number {
  const dates = [onDate, lastRebuild.date, lastSlipSet.date].filter((date) => date !== null);
  return Math.min(...dates.map((date) => Number(date.slice(0, 4))));
}

/** Few hours are mildest, but boost that fades is milder once the slip is out of its first hours: try both. */
function hoursNow(answers: Answers, onDate: string, settings: TriageSettings): readonly number[] {
  const { lastRebuild, lastSlipSet, builtYear } = answers;
  const atServices = [lastRebuild.engineHours ?? 0, lastSlipSet.engineHours ?? 0];
  const least = Math.max(...atServices);
  const from = latest([builtYear === null ? null : `${builtYear}-01-01`, lastRebuild.date, lastSlipSet.date]);
  const most = from === null ? Infinity : least + Math.max(0, yearsBetween(from, onDate) * settings.hoursPerYear);
  return [least, ...atServices.map((hours) => Math.min(most, Math.max(least, hours + settings.willNotHoldHours)))];
}

function hoursAtService(
  { date }: RememberedService,
  { engineHours, builtYear }: Answers,
  onDate: string,
  settings: TriageSettings,
): readonly (number | null)[] {
  if (engineHours === null) return [null];
  const from = date ?? (builtYear === null ? null : `${builtYear}-01-01`);
  const ridden = from === null ? engineHours : Math.max(0, yearsBetween(from, onDate) * settings.hoursPerYear);
  return [engineHours, Math.max(0, engineHours - Math.min(ridden, settings.willNotHoldHours))];
}

/** The latest date by which the hours since then can have been ridden. */
function dateFor(engineHours: number | null, answers: Answers, onDate: string, settings: TriageSettings): string {
  if (engineHours === null || answers.engineHours === null) return onDate;
  const years = (answers.engineHours - engineHours) / settings.hoursPerYear;
  return plusDays(onDate, -Math.ceil(years * 365.25));
}

const latest = (dates: readonly (string | null)[]): string | null =>
  dates.reduce<string | null>((late, date) => (date !== null && (late === null || date > late) ? date : late), null);

const mildest = (verdicts: readonly Verdict[]): Verdict | undefined =>
  verdicts.reduce<Verdict | undefined>(
    (best, one) => (best === undefined || isMilder(one, best) ? one : best),
    undefined,
  );
