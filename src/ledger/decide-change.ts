import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { BENCH_TO_COME, type JobState } from "#shared/shop/job-state.ts";
import type { StoredJob } from "#src/ledger/job-rows.ts";

type ChangeCase = {
  /** The job of the wished-for booking, as its owner's link or the shop's own rights open it; null = not theirs. */
  readonly stored: StoredJob | null;
  readonly booking: string;
  readonly change: "move" | "cancel";
  readonly by: "owner" | "shop";
  readonly now: number;
};

type ChangeDecisionRefusal =
  | { readonly reason: "no-such-booking" }
  | { readonly reason: "already-cancelled" }
  | { readonly reason: "unit-here"; readonly state: JobState }
  | { readonly reason: "too-late"; readonly until: number };

/**
 * May this booking still be moved or cancelled? The deadline binds the owner; the shop knows what it does. Once the
 * unit is here only its bench time can change, and only by the shop.
 */
export function decideChange(it: ChangeCase): Outcome<StoredJob, ChangeDecisionRefusal> {
  const { stored, booking, change, by, now } = it;
  if (stored === null || stored.job.booking.id !== booking) return refuse({ reason: "no-such-booking" });
  if (stored.job.state === "cancelled") return refuse({ reason: "already-cancelled" });
  const { state } = stored.job;
  const mayChange = by === "shop" && change === "move" ? BENCH_TO_COME.includes(state) : state === "booked";
  if (!mayChange) return refuse({ reason: "unit-here", state });
  const until = stored.job.booking.changeableUntil;
  return by === "owner" && now > until ? refuse({ reason: "too-late", until }) : accept(stored);
}
