import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import type { Job } from "#shared/shop/booking.ts";
import { noteEvent } from "#src/ledger/event-rows.ts";
import { findJob, setLinkGeneration } from "#src/ledger/job-rows.ts";
import { keepOwnerLink } from "#src/ledger/link-rows.ts";
import type { Turn } from "#src/ledger/turn.ts";

export type ReissueWish = {
  readonly number: string;
  /** The new link's generation: one more than the job's. */
  readonly generation: number;
  /** SHA-256 of the new link's token, hex. */
  readonly linkHash: string;
  /** Who of the staff, by name. */
  readonly staff?: string;
};
export type ReissueRefusal = { readonly reason: "no-such-job" } | { readonly reason: "changed-meanwhile" };

/** A new link for the owner; the ones before it are dead from now on. */
export function reissueLink(turn: Turn, wish: ReissueWish): Outcome<Job, ReissueRefusal> {
  const { sql, now } = turn;
  const stored = findJob(sql, { by: "number", number: wish.number });
  if (stored === null) return refuse({ reason: "no-such-job" });
  if (wish.generation !== stored.job.linkGeneration + 1) return refuse({ reason: "changed-meanwhile" });
  keepOwnerLink(sql, { hash: wish.linkHash, job: stored.serial, generation: wish.generation }, now);
  setLinkGeneration(sql, stored.serial, wish.generation);
  noteEvent(sql, stored.serial, { at: now, who: "shop", what: "link-reissued", staff: wish.staff ?? null });
  const reissued = findJob(sql, { by: "number", number: wish.number });
  return reissued === null ? refuse({ reason: "no-such-job" }) : accept(reissued.job);
}
