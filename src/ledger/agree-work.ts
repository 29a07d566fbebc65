import type { BenchTimeKept } from "#shared/job/approval-wish.ts";
import { moneyText } from "#shared/messages/money-words.ts";
import { WORK_WORDS } from "#shared/messages/verdict-words.ts";
import type { AgreedWork } from "#shared/shop/agreed-work.ts";
import type { JobEvent } from "#shared/shop/booking.ts";
import { noteEvent } from "#src/ledger/event-rows.ts";
import { type StoredJob, setAgreed } from "#src/ledger/job-rows.ts";
import { planBenchTime } from "#src/ledger/plan-bench-time.ts";
import type { Turn } from "#src/ledger/turn.ts";

/** Who agreed, and by which words. */
type Agreeing = Pick<JobEvent, "who" | "staff"> & { readonly offered: AgreedWork; readonly because: string | null };

/** The job is about the offered work from now on, and gets bench time for it. What the owner was told before stays. */
export function agreeWork(turn: Turn, stored: StoredJob, { offered, who, staff, because }: Agreeing): BenchTimeKept {
  setAgreed(turn.sql, stored.serial, offered);
  const note = [workText(turn, offered), because].filter((text) => text !== null).join(". ");
  noteEvent(turn.sql, stored.serial, { at: turn.now, who, what: "work-upgraded", staff, note });
  return planBenchTime(turn, stored, offered.benchMinutes);
}

/** @example "Full rebuild and slip setting, $425.00" */
export function workText({ settings }: Turn, { work, quote }: AgreedWork): string {
  const { locale } = settings().settings.front;
  return `${WORK_WORDS[work]}, ${moneyText(quote.minor, quote.currency, locale)}`;
}
