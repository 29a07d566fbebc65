import type { Context } from "hono";
import type { Answers } from "#shared/craft/vocabulary.ts";
import { step } from "#shared/intake/conversation.ts";
import { answersFrom, type Draft } from "#shared/intake/draft.ts";
import type { Hold } from "#shared/shop/booking.ts";
import { circumstancesOf } from "#shared/shop/circumstances.ts";
import { type JobPlan, planJob } from "#shared/shop/job-plan.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import type { BenchNeeds, OffersAsk } from "#src/bench/bench-needs.ts";
import { type UnitHere, unitHereIn } from "#src/bench/caller/unit-here.ts";
import { sha256Hex } from "#src/http/owner-link.ts";

/** What a page of a call starts from: what the caller has said, what follows from it, and the time held. */
export type Call = {
  /** Names the call in the address; whoever has it and is signed in can go on with it. */
  readonly token: string;
  readonly tokenHash: string;
  readonly settings: ShopSettings;
  readonly onDate: string;
  readonly draft: Draft;
  readonly answers: Answers;
  readonly plan: JobPlan;
  readonly isComplete: boolean;
  readonly hold: Hold | null;
  readonly here: UnitHere;
};

/** The call that the address names; null where it has ended. */
export async function callOf(c: Context, { shop, now }: BenchNeeds): Promise<Call | null> {
  const token = c.req.param("call") ?? "";
  const tokenHash = await sha256Hex(token);
  const [{ settings }, stored] = await Promise.all([shop.settings(), shop.draft(tokenHash)]);
  if (stored === null) return null;
  const circumstances = circumstancesOf(settings, now());
  const { draft, next } = step(stored.draft, circumstances);
  const answers = answersFrom(draft);
  return {
    token,
    tokenHash,
    settings,
    onDate: circumstances.onDate,
    draft,
    answers,
    plan: planJob(answers, circumstances.onDate, settings),
    isComplete: next === null,
    hold: stored.hold,
    here: unitHereIn(c),
  };
}

/** Which bench time a call asks for. */
export const offersFor = ({ plan, here }: Call): OffersAsk => ({
  verdict: plan.judgement.verdict,
  unitHere: here.unitHere,
});
