import * as z from "zod";
import { DEFAULT, type Source } from "#shared/basics/source.ts";
import { UNIT_FAMILIES, type UnitFamily } from "#shared/craft/vocabulary.ts";

const days = (most: number) => z.int().min(1).max(most);

/** What the bench counts and waits for. The shop edits these, never the code. */
export const BenchSettingsSchema = z.strictObject({
  /** Needle bearings in the gear, by unit family; null = the count found on opening is taken. */
  needles: z.record(z.enum(UNIT_FAMILIES), z.int().min(1).max(200).nullable()),
  /** How long an owner has to answer before the question lapses. */
  approvalDays: days(30),
  /** A part is low where less than this is left after what the coming weeks need. */
  spareParts: z.int().min(0).max(100),
  /** How far ahead parts are ordered. */
  orderAheadDays: days(90),
});
export type BenchSettings = z.infer<typeof BenchSettingsSchema>;

export const BENCH_DEFAULTS: BenchSettings = {
  needles: { "shim-stack": null, "set-nut": null, unknown: null } satisfies Record<UnitFamily, number | null>,
  approvalDays: 5,
  spareParts: 1,
  orderAheadDays: 21,
};

/** Where every number of {@link BENCH_DEFAULTS} comes from. */
export const BENCH_SOURCE: Source = DEFAULT;
