import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { instantOnDay } from "#shared/calendar/zone-clock.ts";
import type { Approval } from "#shared/job/approval.ts";
import type { Asked, AskRefusal, AskWish } from "#shared/job/approval-wish.ts";
import { benchFindings } from "#shared/job/bench-findings.ts";
import { offeredWork, withinGoAhead } from "#shared/job/offered-work.ts";
import { benchCase } from "#shared/job/sheet-case.ts";
import { HISTORY_NOTES } from "#shared/messages/approval-notes.ts";
import { moneyText } from "#shared/messages/money-words.ts";
import type { AgreedWork } from "#shared/shop/agreed-work.ts";
import { dayNumber, plusDays } from "#shared/units/calendar-date.ts";
import { agreeWork, workText } from "#src/ledger/agree-work.ts";
import { findApproval, keepApproval } from "#src/ledger/approval-rows.ts";
import { findJob, type StoredJob } from "#src/ledger/job-rows.ts";
import { applyMove } from "#src/ledger/move-job.ts";
import { findPhoto } from "#src/ledger/photo-rows.ts";
import { readSheet } from "#src/ledger/sheet-rows.ts";
import { type Turn, today } from "#src/ledger/turn.ts";

/** A day's question may be answered until its last minute. */
const MINUTE_MS = 60_000;
/** No unit lies on a shelf longer than that for an answer; default of this project. */
const MOST_DAYS = 90;

/** Asks the owner for more work, or goes ahead with it within the owner's limit. Sent twice, it is asked once. */
export function askOwner(turn: Turn, wish: AskWish): Outcome<Asked, AskRefusal> {
  const stored = findJob(turn.sql, { by: "number", number: wish.number });
  if (stored === null) return refuse({ reason: "no-such-job" });
  const earlier = findApproval(turn.sql, wish.id);
  if (earlier?.job === stored.serial) return accept(askedNow(turn, wish));
  const approval = decide(turn, stored, wish);
  if (!approval.ok) return approval;
  keepApproval(turn.sql, stored.serial, approval.value);
  if (wish.goAhead) goAhead(turn, stored, approval.value);
  else wait(turn, stored, approval.value);
  return accept(askedNow(turn, wish));
}

function decide(turn: Turn, { serial, job }: StoredJob, wish: AskWish): Outcome<Approval, AskRefusal> {
  const { settings } = turn.settings();
  if (job.state !== "on-bench") return refuse({ reason: "not-on-bench", state: job.state });
  if (wish.currency !== settings.prices.currency) return refuse({ reason: "currency-changed" });
  if (wish.photo !== null && findPhoto(turn.sql, serial, wish.photo) === null)
    return refuse({ reason: "no-such-photo" });
  const day = today(turn);
  if (wish.untilDate < day || wish.untilDate > plusDays(day, MOST_DAYS)) return refuse({ reason: "not-a-day" });
  const sheet = readSheet(turn.sql, serial);
  const { answers } = benchCase(job, sheet, settings);
  const offered = offeredWork({ answers, plan: job.plan }, wish, settings);
  if (!wish.anyPrice && !isListPrice(offered, offeredWork({ answers, plan: job.plan }, LISTED(wish), settings))) {
    return refuse({ reason: "not-the-list-price" });
  }
  if (wish.goAhead && !withinGoAhead(job, offered)) return refuse({ reason: "over-go-ahead" });
  return accept({
    id: wish.id,
    state: wish.goAhead ? "approved" : "open",
    askedAt: turn.now,
    askedBy: wish.staff,
    offered,
    why: wish.why,
    photo: wish.photo,
    told: benchFindings(job, sheet, settings),
    until: instantOnDay(settings.calendar.zone, dayNumber(wish.untilDate) + 1, 0) - MINUTE_MS,
    closed: wish.goAhead ? { at: turn.now, by: "go-ahead", note: null } : null,
    words: [],
  });
}

const LISTED = ({ work }: AskWish) => ({ work, priceMinor: null });

const isListPrice = (one: AgreedWork, listed: AgreedWork): boolean => one.quote.minor === listed.quote.minor;

function wait(turn: Turn, { serial }: StoredJob, { offered, askedBy }: Approval): void {
  const note = workText(turn, offered);
  const moved = applyMove(turn, { serial, move: "ask-owner", staff: askedBy, note });
  if (!moved.ok) throw new Error(`A job on the bench could not wait for its owner: ${moved.refusal.reason}`);
}

function goAhead(turn: Turn, stored: StoredJob, { offered, askedBy }: Approval): void {
  const { locale } = turn.settings().settings.front;
  const limit = moneyText(stored.job.goAheadMinor ?? 0, offered.quote.currency, locale);
  agreeWork(turn, stored, { offered, who: "shop", staff: askedBy, because: HISTORY_NOTES.goAhead(limit) });
}

function askedNow({ sql }: Turn, { number, id }: AskWish): Asked {
  const job = findJob(sql, { by: "number", number })?.job;
  const approval = findApproval(sql, id)?.approval;
  if (job === undefined || approval === undefined) throw new Error("What was asked is not there");
  return { job, approval };
}
