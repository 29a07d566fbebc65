import * as z from "zod";
import { BENCH_JOBS } from "#shared/calendar/calendar-settings.ts";
import { DateText, EngineHours } from "#shared/craft/answers-schema.ts";
import { UNIT_FAMILIES } from "#shared/craft/vocabulary.ts";
import { INSPECTED_PARTS, PART_CONDITIONS, SHEET_STEPS } from "#shared/job/sheet-entry.ts";
import { slipTorque, TorqueToolSchema } from "#shared/slip/slip-reading-schema.ts";

/** Raised when the shape changes. Records of every earlier version stay readable: they are never rewritten. */
export const RECORD_VERSION = 1;

const text = z.string().max(2000);
const lbfFt = z.number().min(0).max(200);
const hours = z.number().min(0);
const hash = z.string().regex(/^[0-9a-f]{64}$/);
const BandSchema = z.strictObject({ low: lbfFt, high: lbfFt });
/** A rule that held, in the words of its day, with its source. */
const SaidSchema = z.strictObject({ rule: z.string(), text, source: text });

/** A slip as it was read, all torques in lbf·ft; null where too few readings or the tool tell nothing. */
const MeasuredSlipSchema = z.strictObject({
  readings: z.array(slipTorque).min(1),
  /** The peak as it broke loose; never part of the mean. */
  breakaway: lbfFt.nullable(),
  tool: TorqueToolSchema,
  mean: lbfFt,
  uncertainty: z
    .strictObject({
      standard: z.number().min(0),
      expanded: z.number().min(0),
      /** Level of confidence of `expanded`, 0 to 1. */
      coverage: z.number().min(0).max(1),
      /** Effective degrees of freedom; null = infinite. */
      dof: z.number().positive().nullable(),
    })
    .nullable(),
  /** Against the band; null where the slip was only looked at, or no band was planned. */
  decision: z
    .strictObject({
      is: z.enum(["accept", "reject", "not-proved"]),
      says: text,
      probabilityInBand: z.number().min(0).max(1),
    })
    .nullable(),
  /** What the bench said to it. */
  note: text.nullable(),
});
export type MeasuredSlip = Readonly<z.infer<typeof MeasuredSlipSchema>>;

/** What was found, done and left at one service. It says nothing of the owner: who that is can be erased, this stays. */
export const ServiceSchema = z.strictObject({
  unit: z.strictObject({ family: z.enum(UNIT_FAMILIES), serial: z.string().max(80).nullable() }),
  date: DateText,
  engineHours: EngineHours.nullable(),
  work: z.enum(BENCH_JOBS),
  settingsVersion: z.int().min(1),
  found: z.strictObject({
    slip: MeasuredSlipSchema.nullable(),
    parts: z.array(
      z.strictObject({ part: z.enum(INSPECTED_PARTS), condition: z.enum(PART_CONDITIONS), note: text.nullable() }),
    ),
    needles: z.int().min(0).nullable(),
    /** What follows for the engine, why, and what the owner does next; null where nobody judged it. */
    findings: z
      .strictObject({
        engineDebris: z.enum(["unlikely", "possible", "likely"]),
        reasons: z.array(SaidSchema),
        nextSteps: z.array(SaidSchema),
      })
      .nullable(),
  }),
  /** The steps of the bench sheet in order; a skipped one says why. */
  steps: z.array(
    z.strictObject({ step: z.enum(SHEET_STEPS), was: z.enum(["done", "skipped"]), note: text.nullable() }),
  ),
  left: z.strictObject({
    slip: MeasuredSlipSchema.nullable(),
    target: lbfFt.nullable(),
    band: BandSchema.nullable(),
    needles: z.int().min(0).nullable(),
    /** Slip before and after the lock nut, where both were read with the same tool. */
    rise: z.strictObject({ before: lbfFt, after: lbfFt }).nullable(),
  }),
  parts: z.array(z.strictObject({ part: z.string(), name: z.string(), count: z.int().min(0) })),
  worked: z.array(z.string()),
  rules: z.array(SaidSchema),
  next: z.strictObject({
    /** Of the clock that runs out first. */
    kind: z.enum(["slip-check", "full-rebuild"]),
    slipCheckAtHours: hours.nullable(),
    rebuildAtHours: hours.nullable(),
    rebuildBy: DateText.nullable(),
    /** Engine hours allowed between slip settings on this craft. */
    slipInterval: hours,
  }),
  note: text.nullable(),
});
export type Service = Readonly<z.infer<typeof ServiceSchema>>;

const everyRecord = {
  version: z.literal(RECORD_VERSION),
  job: z.string(),
  /** When it was sealed. */
  at: z.iso.datetime(),
  /** Who of the staff, by name as it was then; null = the shop by itself. */
  by: z.string().nullable(),
};
/** The record that this one takes the place of, by its hash, and why. */
const instead = { supersedes: hash, why: text };

/** One entry of the chain: a service, what corrects it, or that it was taken back. */
export const RecordSchema = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("service"), ...everyRecord, service: ServiceSchema }),
  z.strictObject({ kind: z.literal("correction"), ...everyRecord, ...instead, service: ServiceSchema }),
  z.strictObject({ kind: z.literal("withdrawal"), ...everyRecord, ...instead }),
]);
export type ServiceRecord = Readonly<z.infer<typeof RecordSchema>>;
