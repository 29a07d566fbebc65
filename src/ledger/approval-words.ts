import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import type { Approval } from "#shared/job/approval.ts";
import type { OwnerWord, ShopWord, WordRefusal, WordWish } from "#shared/job/approval-wish.ts";
import type { JobEvent } from "#shared/shop/booking.ts";
import { addWord, findApproval } from "#src/ledger/approval-rows.ts";
import { endOverdueApprovals } from "#src/ledger/close-approval.ts";
import { noteEvent } from "#src/ledger/event-rows.ts";
import { findJob, type StoredJob } from "#src/ledger/job-rows.ts";
import type { Turn } from "#src/ledger/turn.ts";

/** More than any talk about one piece of work needs; default of this project. */
export const MOST_WORDS = 60;

/** The owner asks about what is asked, by the job's own link. A word is kept even where the time to answer is over. */
export function askShop(turn: Turn, wish: OwnerWord): Outcome<Approval, WordRefusal> {
  const stored = findJob(turn.sql, { by: "link", hash: wish.linkHash, now: turn.now });
  return say(turn, stored, wish, { who: "owner", staff: null });
}

/** The shop answers. */
export function replyToOwner(turn: Turn, wish: ShopWord): Outcome<Approval, WordRefusal> {
  const stored = findJob(turn.sql, { by: "number", number: wish.number });
  return say(turn, stored, wish, { who: "shop", staff: wish.staff });
}

function say(
  turn: Turn,
  stored: StoredJob | null,
  { approval: id, text, key }: WordWish,
  { who, staff }: Pick<JobEvent, "who" | "staff">,
): Outcome<Approval, WordRefusal> {
  const { sql, now } = turn;
  endOverdueApprovals(turn);
  const found = findApproval(sql, id);
  if (stored === null || found?.job !== stored.serial) return refuse({ reason: "no-such-approval" });
  if (found.approval.words.length >= MOST_WORDS) return refuse({ reason: "too-many-words" });
  if (addWord(sql, id, { at: now, who, staff, text, key: `${id}.${key}` })) {
    noteEvent(sql, stored.serial, {
      at: now,
      who,
      what: who === "owner" ? "owner-asked" : "shop-replied",
      staff,
      note: text,
    });
  }
  return accept(findApproval(sql, id)?.approval ?? found.approval);
}
