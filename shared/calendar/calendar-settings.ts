import * as z from "zod";
import { DEFAULT, type Source } from "#shared/basics/source.ts";
import { minuteOfDay } from "#shared/calendar/minute-of-day.ts";
import { QUANTUM_MINUTES } from "#shared/calendar/quantum.ts";
import { isZone } from "#shared/calendar/zone-rules.ts";
import { DateText } from "#shared/craft/answers-schema.ts";

/** Jobs that fill bench time; a craft that is not due may still have its slip checked. */
export const BENCH_JOBS = ["slip-check", "full-rebuild", "stop-riding"] as const;
export type BenchJob = (typeof BENCH_JOBS)[number];

/** As keys of the weekly openings, in order. */
export const WEEKDAYS = ["1", "2", "3", "4", "5", "6", "7"] as const;
/** ISO 8601: 1 is Monday. */
export type Weekday = (typeof WEEKDAYS)[number];

const quarterHour = z
  .string()
  .regex(/^(?:(?:[01]\d|2[0-3]):(?:00|15|30|45)|24:00)$/, "a time on the quarter-hour, as 08:15; 24:00 ends a day");

const OpeningSchema = z
  .strictObject({ opens: quarterHour, closes: quarterHour })
  .readonly()
  .refine(({ opens, closes }) => opens < closes, { path: ["closes"], message: "later than the opening" });
/** One stretch of wall time in which the benches are worked. */
export type Opening = z.infer<typeof OpeningSchema>;

const DayOpenings = z
  .array(OpeningSchema)
  .max(4)
  .readonly()
  .refine((day) => day.every(({ opens }, index) => index === 0 || opens >= (day[index - 1]?.closes ?? "")), {
    message: "openings in order, none reaching into the next",
  });

const WeeklySchema = z
  .strictObject({
    1: DayOpenings,
    2: DayOpenings,
    3: DayOpenings,
    4: DayOpenings,
    5: DayOpenings,
    6: DayOpenings,
    7: DayOpenings,
  })
  .readonly();

const ClosureSchema = z
  .strictObject({ from: DateText, to: DateText, why: z.string().max(120) })
  .readonly()
  .refine(({ from, to }) => from <= to, { path: ["to"], message: "the first day of the closure or later" });

/** Part of every offer's id, so it keeps to a few plain characters. */
export const BenchId = z
  .string()
  .max(16)
  .regex(/^[a-z0-9]+(?:-[a-z0-9]+)*$/, "lower-case letters and digits, joined by single hyphens");

const BenchSchema = z.strictObject({ id: BenchId, name: z.string().trim().min(1).max(40) }).readonly();

const benchMinutes = z.int().min(QUANTUM_MINUTES).max(1440).multipleOf(QUANTUM_MINUTES);
const workingDays = z.int().min(0).max(30);

/** When the benches are worked, by which rules time is offered and how long it is held. Dates are inclusive. */
export const CalendarSettingsSchema = z
  .strictObject({
    zone: z.string().max(64).refine(isZone, "a time zone of the IANA database, as America/New_York"),
    weekly: WeeklySchema,
    closures: z.array(ClosureSchema).max(100).readonly(),
    benches: z
      .array(BenchSchema)
      .min(1)
      .max(8)
      .readonly()
      .refine((benches) => new Set(benches.map(({ id }) => id)).size === benches.length, "no bench id twice"),
    minutes: z
      .strictObject({ "slip-check": benchMinutes, "full-rebuild": benchMinutes, "stop-riding": benchMinutes })
      .readonly(),
    /** From posting to standing on the bench. */
    leadWorkingDays: z
      .strictObject({ standard: workingDays, urgent: workingDays })
      .readonly()
      .refine(({ standard, urgent }) => urgent <= standard, { path: ["urgent"], message: "at most the standard lead" }),
    holdMinutes: z.int().min(1).max(120),
    /** How long after the soonest offer the others may lie. */
    offerWindowDays: z.int().min(1).max(90),
    changeUntilWorkingDays: workingDays,
    openHoldsPerSource: z.int().min(1).max(1_000_000),
  })
  .readonly()
  .superRefine(({ weekly, minutes }, context) => {
    const longest = longestOpening(Object.values(weekly).flat());
    for (const job of BENCH_JOBS) {
      if (minutes[job] <= longest) continue;
      context.addIssue({
        code: "custom",
        path: ["minutes", job],
        message: `at most ${longest}, the longest opening of the week: a job is not cut in two`,
      });
    }
  });
export type CalendarSettings = z.infer<typeof CalendarSettingsSchema>;

const workday = [{ opens: "08:00", closes: "17:00" }];

/** The demo shop's benches, and what a new shop starts from. */
export const DEFAULT_CALENDAR: CalendarSettings = {
  zone: "America/New_York",
  weekly: { 1: workday, 2: workday, 3: workday, 4: workday, 5: workday, 6: [], 7: [] },
  closures: [],
  benches: [
    { id: "b1", name: "Bench 1" },
    { id: "b2", name: "Bench 2" },
  ],
  minutes: { "slip-check": 60, "full-rebuild": 240, "stop-riding": 300 },
  leadWorkingDays: { standard: 4, urgent: 2 },
  holdMinutes: 15,
  offerWindowDays: 21,
  changeUntilWorkingDays: 1,
  openHoldsPerSource: 5,
};

/** Where every number of {@link DEFAULT_CALENDAR} comes from. */
export const CALENDAR_SOURCE: Source = DEFAULT;

function longestOpening(openings: readonly Opening[]): number {
  return Math.max(0, ...openings.map(({ opens, closes }) => minuteOfDay(closes) - minuteOfDay(opens)));
}
