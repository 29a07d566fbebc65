import { busyOf } from "#shared/calendar/board-schema.ts";
import { findOffers, type Offer } from "#shared/calendar/find-offers.ts";
import type { Verdict } from "#shared/triage/verdict.ts";
import type { OwnerNeeds } from "#src/owner/owner-needs.ts";

/** Bench time on offer, and the moment (epoch ms) for which that was known: a published board may be a minute old. */
export type FreeTime = { readonly offers: readonly Offer[]; readonly asOf: number; readonly zone: string };

/** From the published board where that is fresh enough, else from the shop itself. A hold always asks the shop. */
export async function freeTime({ publishedBoard, shop, now }: OwnerNeeds, verdict: Verdict): Promise<FreeTime> {
  const board = (await publishedBoard(now())) ?? (await shop.board());
  const { settings, generatedAt } = board;
  return {
    offers: findOffers({ settings, busy: busyOf(board), verdict, now: now() }),
    asOf: generatedAt,
    zone: settings.zone,
  };
}
