import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { BENCH_JOBS, type BenchJob } from "#shared/calendar/calendar-settings.ts";
import { DateText } from "#shared/craft/answers-schema.ts";
import { WORDS_MOST } from "#shared/job/approval.ts";
import type { AskStart } from "#shared/job/approval-wish.ts";
import { ASK_PROBLEMS } from "#shared/messages/shop-approval-words.ts";
import { minorDigits, readMajor } from "#shared/shop/minor-units.ts";

/** The form as typed, by field name. */
const ASK_FIELDS = ["work", "price", "why", "photo", "until"] as const;
export type AskField = (typeof ASK_FIELDS)[number];
export type TypedAsk = Readonly<Record<AskField, string>>;
export type AskProblems = Readonly<Partial<Record<AskField, string>>>;

export type ReadAsk = {
  readonly work: BenchJob;
  readonly priceMinor: number;
  readonly currency: string;
  readonly why: string;
  readonly photo: string | null;
  readonly untilDate: string;
};

/** What the form starts from: what the sheet says the unit needs. */
export const askAtFirst = ({ findings, untilDate }: AskStart): TypedAsk => ({
  work: findings.work,
  price: "",
  why: findings.reasons.map(({ text }) => text).join("\n"),
  photo: "",
  until: untilDate,
});

/** The price stands in the choice itself, so that nobody asks for another than the one that was on the page. */
export const workChoice = (work: BenchJob, minor: number, currency: string): string => `${work}:${minor}:${currency}`;

export const typedAsk = (form: Readonly<Record<string, string>>): TypedAsk => ({
  work: form["work"] ?? "",
  price: form["price"] ?? "",
  why: form["why"] ?? "",
  photo: form["photo"] ?? "",
  until: form["until"] ?? "",
});

/** Reads the form. Every field that is wrong is named, with what is accepted. */
export function readAsk(typed: TypedAsk): Outcome<ReadAsk, AskProblems> {
  const choice = readChoice(typed.work);
  const price =
    choice === null || typed.price.trim() === "" ? null : readMajor(typed.price, minorDigits(choice.currency));
  const why = typed.why.trim();
  const problems: AskProblems = {
    ...(choice === null && { work: ASK_PROBLEMS.work }),
    ...(price !== null && !price.ok && { price: ASK_PROBLEMS.price }),
    ...((why === "" || why.length > WORDS_MOST) && { why: ASK_PROBLEMS.why(WORDS_MOST) }),
    ...(!DateText.safeParse(typed.until).success && { until: ASK_PROBLEMS.until }),
  };
  if (choice === null || Object.keys(problems).length > 0) return refuse(problems);
  return accept({
    work: choice.work,
    priceMinor: price?.ok ? price.value : choice.minor,
    currency: choice.currency,
    why,
    photo: typed.photo === "" ? null : typed.photo,
    untilDate: typed.until,
  });
}

function readChoice(text: string): { work: BenchJob; minor: number; currency: string } | null {
  const [, name, minor, currency] = /^([a-z-]+):(\d{1,9}):([A-Z]{3})$/.exec(text) ?? [];
  const work = BENCH_JOBS.find((known) => known === name);
  return work === undefined || minor === undefined || currency === undefined
    ? null
    : { work, minor: Number(minor), currency };
}
