import type { Answers, RememberedService } from "#shared/craft/vocabulary.ts";
import { hoursNow, latestDayFor, riddenSince } from "#shared/life/hours-now.ts";
import type { TriageSettings } from "#shared/triage/triage-settings.ts";
import { plusDays } from "#shared/units/calendar-date.ts";

const OTHER = { lastRebuild: "lastSlipSet", lastSlipSet: "lastRebuild" } as const;

/** An unknown, and the answers with it filled in: the plausible values among which the mildest verdict is sure to be. */
export type Unknown = { readonly answer: string; readonly fillings: readonly Answers[] };
type Known = {
  readonly answers: Answers;
  readonly other: RememberedService;
  readonly onDate: string;
  readonly settings: TriageSettings;
};

/** What is not known of one service, with the plausible values among which the mildest verdict is sure to be. */
export function serviceUnknowns(
  name: keyof typeof OTHER,
  answers: Answers,
  onDate: string,
  settings: TriageSettings,
): readonly Unknown[] {
  const service = answers[name];
  const known: Known = { answers, other: answers[OTHER[name]], onDate, settings };
  const fill = (change: Partial<RememberedService>): Answers => ({
    ...answers,
    [name]: { ...service, when: "known", ...change },
  });
  const dated = (engineHours: number | null) =>
    mildestDates(engineHours, known).map((date) => fill({ engineHours, date }));
  if (service.when === "unknown") {
    return [{ answer: name, fillings: mildestHours(null, known).flatMap(dated) }];
  }
  const found: Unknown[] = [];
  if (service.when === "known" && service.date === null) {
    found.push({ answer: `${name}.date`, fillings: dated(service.engineHours) });
  }
  if (service.when === "known" && service.engineHours === null) {
    const fillings = mildestHours(service.date, known).map((engineHours) => fill({ engineHours }));
    found.push({ answer: `${name}.engineHours`, fillings });
  }
  return found;
}

/** None at odds with the date or with the other service. */
function mildestHours(date: string | null, known: Known): readonly number[] {
  const { answers, other, onDate, settings } = known;
  if (date !== null && date === other.date && other.engineHours !== null) return [other.engineHours];
  const now = answers.engineHours;
  const ridden = date === null ? Infinity : riddenSince(date, onDate, settings.hoursPerYear);
  const isAfter = date !== null && other.date !== null && date > other.date;
  const least = Math.max(0, (now ?? 0) - ridden, isAfter ? (other.engineHours ?? 0) : 0);
  // Now, and as long ago as makes a slip that fades no longer "fresh"; or what says most about the hours now.
  const tried = now === null ? hoursThatTellNow(ridden, known) : [now, now - settings.willNotHoldHours];
  return tried.map((hours) => Math.max(least, hours));
}

function hoursThatTellNow(ridden: number, { answers, other, onDate, settings }: Known): readonly number[] {
  const atOther = other.engineHours ?? 0;
  if (ridden !== Infinity) return [atOther, atOther - ridden];
  const { most } = hoursNow(answers, onDate, settings.hoursPerYear);
  return most === Infinity ? [atOther] : [atOther, most];
}

/**
 * The latest date by which the hours since then can have been ridden, and at which the other service fits in. Where
 * the hours do not tell which of the two came first: also just before the other, which may say more.
 */
function mildestDates(engineHours: number | null, { answers, other, onDate, settings }: Known): readonly string[] {
  const ridden = engineHours === null ? 0 : (answers.engineHours ?? engineHours) - engineHours;
  const latest = latestDayFor(ridden, onDate, settings.hoursPerYear);
  if (other.date === null) return [latest];
  const before = earlierOf(latest, plusDays(other.date, -1));
  if (engineHours !== null && other.engineHours !== null) {
    return [engineHours < other.engineHours ? before : latest];
  }
  return before < `${answers.builtYear ?? 0}-01-01` ? [latest] : [latest, before];
}

const earlierOf = (one: string, other: string): string => (one < other ? one : other);
