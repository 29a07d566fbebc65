import type { Answers } from "#shared/craft/vocabulary.ts";
import { judge } from "#shared/triage/judge.ts";
import { unknownsOf } from "#shared/triage/mildest-fillings.ts";
import type { TriageSettings } from "#shared/triage/triage-settings.ts";
import { isMilder, type Verdict } from "#shared/triage/verdict.ts";

/** One answer the owner could still find out, and the mildest verdict it could lead to. */
export type WouldChange = { readonly answer: string; readonly to: Verdict };

/**
 * Each single unknown whose best plausible value gives a milder verdict, all else as answered.
 * Names are the fields of {@link Answers}, dotted where nested: `lastRebuild`, `lastRebuild.date`, `mods.engine`.
 */
export function wouldChange(answers: Answers, onDate: string, settings: TriageSettings): readonly WouldChange[] {
  const now = judge(answers, onDate, settings).verdict;
  if (now === "not-due") return [];
  return unknownsOf(answers, onDate, settings).flatMap(({ answer, fillings }) => {
    const to = mildest(fillings.map((filled) => judge(filled, onDate, settings).verdict));
    return isMilder(to, now) ? [{ answer, to }] : [];
  });
}

const mildest = (verdicts: readonly Verdict[]): Verdict =>
  verdicts.reduce((best, one) => (isMilder(one, best) ? one : best), "stop-riding");
