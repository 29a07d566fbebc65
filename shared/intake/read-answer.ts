import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import type { RememberedService } from "#shared/craft/vocabulary.ts";
import type { Draft } from "#shared/intake/draft.ts";
import type { AnswerKind, Question } from "#shared/intake/questions.ts";
import { type PressureUnit, pressure, pressureIn } from "#shared/units/pressure.ts";

/** A form's fields as sent: a name may come more than once. */
export type Fields = Readonly<Record<string, readonly string[]>>;

/** What is wrong with one field, with what is accepted; its words are in `shared/messages`. */
export type FieldProblem =
  | { readonly field: string; readonly problem: "choose-one" }
  | { readonly field: string; readonly problem: "not-a-number" }
  | { readonly field: string; readonly problem: "out-of-range"; readonly least: number; readonly most: number }
  | { readonly field: string; readonly problem: "not-a-date" }
  | { readonly field: string; readonly problem: "in-the-future"; readonly today: string }
  | { readonly field: string; readonly problem: "more-than-now"; readonly now: number };

/** Names of the fields in the forms of all questions. */
export const FIELD = {
  choice: "choice",
  notLooked: "notLooked",
  nothing: "nothing",
  value: "value",
  unit: "unit",
  notSure: "notSure",
  when: "when",
  date: "date",
  hours: "hours",
  leftAt: "leftAt",
} as const;

/** Reads the form of a question. The value is what {@link Draft} keeps for it. */
export function readAnswer(
  question: Question,
  fields: Fields,
  before: Draft,
  onDate: string,
): Outcome<NonNullable<unknown> | null, FieldProblem> {
  const kind = question.answer;
  switch (kind.kind) {
    case "several":
      return readSeveral(kind, fields);
    case "one":
      return readOne(kind, fields);
    case "number":
      return readNumberOrNotSure(fields, {
        least: kind.least,
        most: question.id === "builtYear" ? yearOf(onDate) + 1 : kind.most,
        decimals: kind.whole ? 0 : READ_TO,
      });
    case "measure":
      return readMeasure(kind, fields);
    case "service":
      return readService(fields, before, onDate);
  }
}

const first = (fields: Fields, name: string): string => (fields[name]?.[0] ?? "").trim();
const yearOf = (date: string): number => Number(date.slice(0, 4));

function readSeveral({ options }: AnswerKind & { kind: "several" }, fields: Fields): ReturnType<typeof readAnswer> {
  const noticed = options.filter((option) => fields[FIELD.choice]?.includes(option));
  const notLooked = first(fields, FIELD.notLooked) !== "";
  const nothing = first(fields, FIELD.nothing) !== "";
  if (noticed.length === 0 && !notLooked && !nothing) return refuse({ field: FIELD.choice, problem: "choose-one" });
  return accept({ noticed, notLooked });
}

function readOne({ options }: AnswerKind & { kind: "one" }, fields: Fields): ReturnType<typeof readAnswer> {
  const choice = first(fields, FIELD.choice);
  return options.includes(choice) ? accept(choice) : refuse({ field: FIELD.choice, problem: "choose-one" });
}

type Limits = { readonly least: number; readonly most: number; readonly decimals: number };

/** Hour meters and slip are read no finer; and so "1,200", which means twelve hundred, is never taken for 1.2. */
const READ_TO = 2;
/** Enough for a boost in bar, and few enough that the number is written back as it was. */
const BOOST_READ_TO = 6;

function readNumberOrNotSure(fields: Fields, limits: Limits): ReturnType<typeof readAnswer> {
  return first(fields, FIELD.notSure) === "" ? readNumber(fields, FIELD.value, limits) : accept(null);
}

/** A comma is read as the decimal point, since many keypads offer only that; spaces may group the digits. */
function readNumber(fields: Fields, field: string, { least, most, decimals }: Limits): Outcome<number, FieldProblem> {
  const text = first(fields, field).replace(/\s/g, "").replace(",", ".");
  const [, whole = "", fraction = ""] = /^(\d*)(?:\.(\d*))?$/.exec(text) ?? [];
  if (whole + fraction === "" || fraction.length > decimals) return refuse({ field, problem: "not-a-number" });
  const value = Number(text);
  return value < least || value > most ? refuse({ field, problem: "out-of-range", least, most }) : accept(value);
}

function readMeasure(kind: AnswerKind & { kind: "measure" }, fields: Fields): ReturnType<typeof readAnswer> {
  if (first(fields, FIELD.notSure) !== "") return accept(null);
  const unit = kind.units.find((known) => known === first(fields, FIELD.unit)) as PressureUnit | undefined;
  if (unit === undefined) return refuse({ field: FIELD.unit, problem: "choose-one" });
  const hundredths = (psi: number) => pressureIn(unit, pressure(psi, "psi")) * 100;
  const least = Math.ceil(hundredths(kind.leastPsi)) / 100;
  const most = Math.floor(hundredths(kind.mostPsi)) / 100;
  const read = readNumber(fields, FIELD.value, { least, most, decimals: BOOST_READ_TO });
  return read.ok ? accept(pressure(read.value, unit)) : read;
}

/** Most slip that any such clutch is left at, lbf·ft; more is a slip of the finger (default of this project). */
const MOST_SLIP = 60;

function readService(fields: Fields, before: Draft, onDate: string): Outcome<RememberedService, FieldProblem> {
  const when = first(fields, FIELD.when);
  if (when === "never" || when === "unknown") return accept({ when, date: null, engineHours: null, slipLeftAt: null });
  const isTold = [FIELD.date, FIELD.hours, FIELD.leftAt].some((field) => first(fields, field) !== "");
  if (when !== "known" && !isTold) return refuse({ field: FIELD.when, problem: "choose-one" });
  const date = readDate(fields, onDate);
  if (!date.ok) return date;
  const hours = readOptional(fields, FIELD.hours, { least: 0, most: 20_000, decimals: READ_TO });
  if (!hours.ok) return hours;
  const now = before.engineHours ?? Infinity;
  if (hours.value !== null && hours.value > now) return refuse({ field: FIELD.hours, problem: "more-than-now", now });
  const leftAt = readOptional(fields, FIELD.leftAt, { least: 0, most: MOST_SLIP, decimals: READ_TO });
  if (!leftAt.ok) return leftAt;
  return accept({ when: "known", date: date.value, engineHours: hours.value, slipLeftAt: leftAt.value });
}

/** Left empty = not sure. */
const readOptional = (fields: Fields, field: string, limits: Limits): Outcome<number | null, FieldProblem> =>
  first(fields, field) === "" ? accept(null) : readNumber(fields, field, limits);

function readDate(fields: Fields, onDate: string): Outcome<string | null, FieldProblem> {
  const text = first(fields, FIELD.date);
  if (text === "") return accept(null);
  if (!isDate(text)) return refuse({ field: FIELD.date, problem: "not-a-date" });
  return text > onDate ? refuse({ field: FIELD.date, problem: "in-the-future", today: onDate }) : accept(text);
}

function isDate(text: string): boolean {
  if (!/^(19|20)\d\d-\d\d-\d\d$/.test(text)) return false;
  const date = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(text);
}
