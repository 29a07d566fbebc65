import * as z from "zod";
import { answerFields, RememberedServiceSchema } from "#shared/craft/answers-schema.ts";
import { RIDING, SYMPTOMS, UNIT_FAMILIES, WASHERS } from "#shared/craft/vocabulary.ts";
import { PRESSURE_UNITS } from "#shared/units/pressure.ts";

const YesNoUnknown = z.enum(["yes", "no", "unknown"]);

const BoostSchema = z.strictObject({ value: z.number().positive(), unit: z.enum(PRESSURE_UNITS) }).nullable();

const NoticedSchema = z.strictObject({
  noticed: z.array(z.enum(SYMPTOMS)).max(SYMPTOMS.length).readonly(),
  notLooked: z.boolean(),
});

/**
 * A {@link Draft} read back from storage or from the browser. A missing key = not answered; unknown keys are refused.
 * It says that each answer is well formed; whether the answers go together is for `step` to say.
 */
export const DraftSchema = z.strictObject({
  symptoms: NoticedSchema.exactOptional(),
  unitFamily: z.enum(UNIT_FAMILIES).exactOptional(),
  builtYear: answerFields.builtYear.exactOptional(),
  engineHours: answerFields.engineHours.exactOptional(),
  riding: z.enum(RIDING).exactOptional(),
  engineModified: YesNoUnknown.exactOptional(),
  chargerModified: YesNoUnknown.exactOptional(),
  boost: BoostSchema.exactOptional(),
  changedSinceSlip: YesNoUnknown.exactOptional(),
  lastRebuild: RememberedServiceSchema.exactOptional(),
  lastSlipSet: RememberedServiceSchema.exactOptional(),
  washers: z.enum(WASHERS).exactOptional(),
  washersAgain: z.enum(WASHERS).exactOptional(),
});
