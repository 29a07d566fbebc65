import * as z from "zod";
import { answersAhead } from "#shared/craft/answers-ahead.ts";
import { answerFields, DateText, EngineHours } from "#shared/craft/answers-schema.ts";
import type { Answers } from "#shared/craft/vocabulary.ts";

const SERVICES = ["lastRebuild", "lastSlipSet"] as const;

/** Checks of one field against another look at every field that can be read, whatever is wrong with the rest. */
const ALWAYS = { when: () => true };

/** Answers that are to be judged as on a day: nothing in them may lie after it. */
export const JudgedAnswers = z.strictObject({ onDate: DateText, ...answerFields }).superRefine((body, context) => {
  checkHours(body, context);
  const told = AnswersTold.parse(body);
  for (const { field, latest } of told.onDate === null ? [] : answersAhead(told, told.onDate))
    context.addIssue({ code: "custom", path: field.split("."), message: orEarlier(latest) });
}, ALWAYS);

/**
 * The same answers where they go with a wish for bench time. They are judged on the day the wish is made, so an
 * `onDate` that comes along with them is not used.
 */
export const WishAnswers = z
  .strictObject({ onDate: DateText.optional().describe("Not used here: today counts"), ...answerFields })
  .superRefine(checkHours, ALWAYS)
  .transform(({ onDate: _, ...answers }): Answers => answers);

const orNull = <Schema extends z.ZodType>(schema: Schema) => schema.nullable().catch(null);
const NO_SERVICE = { date: null, engineHours: null };
const ServiceTold = z.object({ date: orNull(DateText), engineHours: orNull(EngineHours) }).catch(NO_SERVICE);

/** Of answers that may be wrong anywhere, the times that can be read; the others are `null`. */
export const AnswersTold = z
  .object({
    onDate: orNull(DateText),
    builtYear: orNull(z.int()),
    engineHours: orNull(EngineHours),
    lastRebuild: ServiceTold,
    lastSlipSet: ServiceTold,
  })
  .catch({ onDate: null, builtYear: null, engineHours: null, lastRebuild: NO_SERVICE, lastSlipSet: NO_SERVICE });

/** What a field accepts whose time must not be after another. */
export const orEarlier = (latest: string): string => `${latest} or earlier`;

function checkHours(body: unknown, context: z.RefinementCtx) {
  const told = AnswersTold.parse(body);
  for (const service of SERVICES) {
    const then = told[service].engineHours;
    if (then === null || told.engineHours === null || then <= told.engineHours) continue;
    const message = `at most ${told.engineHours}, the engine hours now`;
    context.addIssue({ code: "custom", path: [service, "engineHours"], message });
  }
}
