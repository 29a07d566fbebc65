import * as z from "zod";
import { REMEMBERED, RIDING, SYMPTOMS, UNIT_FAMILIES, WASHERS } from "#shared/craft/vocabulary.ts";

/** Hour meters of such craft show at most a few thousand; more is a slip of the finger. */
const MOST_HOURS = 20_000;
const OLDEST_YEAR = 1985;
const NEWEST_YEAR = 2100;

export const DateText = z.iso.date().describe("Calendar date, YYYY-MM-DD");
export const EngineHours = z.number().min(0).max(MOST_HOURS).describe("Engine hours, 0 to 20000");
const notSure = <Schema extends z.ZodType>(schema: Schema) => schema.nullable().describe("null = not sure");

export const RememberedServiceSchema = z
  .strictObject({
    when: z.enum(REMEMBERED),
    date: notSure(DateText).default(null),
    engineHours: notSure(EngineHours).default(null),
    slipLeftAt: z.number().min(0).max(60).nullable().default(null).describe("Slip it was left at, lbf.ft"),
  })
  .superRefine(
    (service, context) => {
      if (service.when !== "never" && service.when !== "unknown") return;
      for (const field of ["date", "engineHours", "slipLeftAt"] as const) {
        if ((service[field] ?? null) === null) continue;
        context.addIssue({ code: "custom", path: [field], message: `null unless when is "known"` });
      }
    },
    // Looked at whatever else is wrong, so that all is named at once.
    { when: ({ value }) => typeof value === "object" && value !== null },
  );

export const ModsSchema = z.strictObject({
  engine: notSure(z.boolean()),
  charger: notSure(z.boolean()),
  boostPsi: notSure(z.number().min(0).max(60)).default(null),
  changedSinceSlip: notSure(z.boolean()).default(false),
});

/** The fields of {@link Answers}, to be spread into the request bodies that carry them. */
export const answerFields = {
  unitFamily: z.enum(UNIT_FAMILIES),
  builtYear: notSure(z.int().min(OLDEST_YEAR).max(NEWEST_YEAR)),
  engineHours: notSure(EngineHours),
  riding: z.enum(RIDING),
  mods: ModsSchema,
  lastRebuild: RememberedServiceSchema,
  lastSlipSet: RememberedServiceSchema,
  washers: z.enum(WASHERS),
  symptoms: z.array(z.enum(SYMPTOMS)).max(SYMPTOMS.length),
  notLooked: z.boolean().default(false),
};

export const AnswersSchema = z.strictObject(answerFields);
