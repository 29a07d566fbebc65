import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import type { StoredJob } from "#src/ledger/job-rows.ts";

type ChangeCase = {
  /** The job of the wished-for booking, as its owner's link or the shop's own rights open it; null = not theirs. */
  readonly stored: StoredJob | null;
  readonly booking: string;
  readonly by: "owner" | "shop";
  readonly now: number;
};

type ChangeDecisionRefusal =
  | { readonly reason: "no-such-booking" }
  | { readonly reason: "already-cancelled" }
  | { readonly reason: "too-late"; readonly until: number };

/** May this booking still be moved or cancelled? The deadline binds the owner; the shop knows what it does. */
export function decideChange({ stored, booking, by, now }: ChangeCase): Outcome<StoredJob, ChangeDecisionRefusal> {
  if (stored === null || stored.job.booking.id !== booking) return refuse({ reason: "no-such-booking" });
  if (stored.job.state === "cancelled") return refuse({ reason: "already-cancelled" });
  const until = stored.job.booking.changeableUntil;
  return by === "owner" && now > until ? refuse({ reason: "too-late", until }) : accept(stored);
}
