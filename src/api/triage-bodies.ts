import * as z from "zod";
import { answerFields, DateText } from "#shared/craft/answers-schema.ts";
import { ENGINE_DEBRIS } from "#shared/triage/engine-debris.ts";
import { VERDICTS } from "#shared/triage/verdict.ts";

export const VerdictName = z.enum(VERDICTS).describe("Mildest first");

const ReasonAnswer = z.strictObject({
  rule: z.string().describe("Id of the rule that held"),
  text: z.string().describe("The same in plain words"),
  source: z.string().describe("Where the rule comes from"),
});

/** What POST /api/triage answers. */
export const TriageAnswer = z.strictObject({
  verdict: VerdictName,
  reasons: z.array(ReasonAnswer).min(1).describe("Every rule that held, worst first"),
  advice: z.array(ReasonAnswer).describe("What to do besides; changes no verdict"),
  engineDebris: z.enum(ENGINE_DEBRIS).describe("Has the charger thrown parts into the engine?"),
  wouldChange: z
    .array(z.strictObject({ answer: z.string(), to: VerdictName }))
    .describe("Each single unknown that could make the verdict milder, and the mildest it could lead to"),
  due: z.strictObject({
    kind: z.enum(["slip-check", "full-rebuild"]),
    by: DateText.nullable(),
    atEngineHours: z.number().nullable(),
  }),
});

/** What POST /api/slip-plan takes. */
export const SlipPlanRequest = z.strictObject({
  unitFamily: answerFields.unitFamily,
  riding: answerFields.riding,
  mods: answerFields.mods,
});

const torqueIn = (unit: "lbf.ft" | "N.m") => z.strictObject({ value: z.number(), unit: z.literal(unit) });
const Band = z.strictObject({ low: z.number(), high: z.number() });

/** What POST /api/slip-plan answers; `null` where the shop must measure or ask first. */
export const SlipPlanAnswer = z.strictObject({
  target: torqueIn("lbf.ft").nullable(),
  targetSI: torqueIn("N.m").nullable(),
  band: Band.nullable().describe("Limits of the final slip, lbf.ft"),
  setBeforeLock: torqueIn("lbf.ft").nullable().describe("Slip to set before the lock nut of a set-nut unit"),
  basis: z.array(z.string()).describe("Ids of the rules that held"),
  cautions: z.array(z.string()),
});

/** What POST /api/slip-reading answers; torques in lbf·ft. */
export const SlipReadingAnswer = z.strictObject({
  mean: z.number(),
  standardUncertainty: z.number(),
  effectiveDof: z.number().nullable().describe("null = infinite: all readings are the same"),
  expanded: z.number().describe("Half-width of the interval at the shop's level of confidence"),
  probabilityInBand: z.number(),
  guardBand: z.number().describe("How far inside a limit the mean must lie to be accepted"),
  decision: z.enum(["accept", "reject", "not-proved"]),
  why: z.string(),
  warnings: z.array(z.string()),
});
