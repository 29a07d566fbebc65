import * as z from "zod";
import {
  INSPECTED_PARTS,
  PART_CONDITIONS,
  SHEET_STEPS,
  type SheetEntry,
  type SheetStepId,
} from "#shared/job/sheet-entry.ts";
import { slipTorque, TorqueToolSchema } from "#shared/slip/slip-reading-schema.ts";

const MOST_READINGS = 50;
const MOST_NEEDLES = 200;
const LONGEST_NOTE = 500;
const LONGEST_SERIAL = 60;
const LONGEST_NAME = 60;

const note = z.string().trim().min(1).max(LONGEST_NOTE);
const noteOrNull = note.nullable();

const SlipEntrySchema = z.strictObject({
  kind: z.literal("slip"),
  readings: z.array(slipTorque).min(1).max(MOST_READINGS),
  breakaway: slipTorque.nullable(),
  tool: TorqueToolSchema,
  why: noteOrNull,
});

const InspectEntrySchema = z.strictObject({
  kind: z.literal("inspect"),
  parts: z.partialRecord(
    z.enum(INSPECTED_PARTS),
    z.strictObject({ condition: z.enum(PART_CONDITIONS), note: noteOrNull }),
  ),
  unitFamily: z.enum(["shim-stack", "set-nut"]).nullable(),
  boostPsi: z.number().min(0).max(60).nullable(),
  serial: z.string().trim().min(1).max(LONGEST_SERIAL).nullable(),
});

const CountEntrySchema = z.strictObject({
  kind: z.literal("count"),
  needles: z.int().min(0).max(MOST_NEEDLES),
  why: noteOrNull,
});

const SettingEntrySchema = z.strictObject({
  kind: z.literal("setting"),
  tries: z
    .array(
      z.strictObject({
        nutDegrees: z.number().min(0).max(1440).nullable(),
        shimMm: z.number().min(0).max(20).nullable(),
        slip: slipTorque,
        loosened: z.boolean(),
      }),
    )
    .min(1)
    .max(MOST_READINGS),
  tool: TorqueToolSchema,
});

const DoneEntrySchema = z.strictObject({ kind: z.literal("done"), note: noteOrNull });
const SkippedEntrySchema = z.strictObject({ kind: z.literal("skipped"), why: note });

/** What may be written at a step, by the step's kind. */
export const ENTRY_SCHEMAS = {
  slip: SlipEntrySchema,
  inspect: InspectEntrySchema,
  count: CountEntrySchema,
  setting: SettingEntrySchema,
  done: DoneEntrySchema,
  skipped: SkippedEntrySchema,
} as const satisfies { readonly [Kind in SheetEntry["kind"]]: z.ZodType<Extract<SheetEntry, { kind: Kind }>> };

/** Any entry, as it is read back from where it is kept. */
export const SheetEntrySchema = z.discriminatedUnion("kind", [
  SlipEntrySchema,
  InspectEntrySchema,
  CountEntrySchema,
  SettingEntrySchema,
  DoneEntrySchema,
  SkippedEntrySchema,
]) satisfies z.ZodType<SheetEntry>;

/**
 * Which version the writer had seen (0 = none), the key by which what is sent twice is kept once, and who wrote it where
 * the device says so.
 */
export const EntryStampSchema = z.strictObject({
  after: z.int().min(0).max(100_000),
  key: z.string().regex(/^[\w-]{16,64}$/, "16 to 64 letters, digits, _ or -"),
  by: z.string().min(1).max(LONGEST_NAME).nullable(),
});

/** @example sheetStepIn("inspect") // "inspect" */
export const sheetStepIn = (text: string): SheetStepId | null => SHEET_STEPS.find((known) => known === text) ?? null;
