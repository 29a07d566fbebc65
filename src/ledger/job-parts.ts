import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { workNow } from "#shared/shop/agreed-work.ts";
import { IN_THE_SHOP } from "#shared/shop/job-state.ts";
import { PARTS } from "#shared/shop/parts.ts";
import { SHELVES, sameShelf, shelfOf, shelvesFor } from "#shared/shop/shelf.ts";
import { RESERVING, stillWanted } from "#shared/shop/stock.ts";
import type { Balance } from "#shared/shop/stock-book.ts";
import type { JobPartLine, JobPartRefusal, LayOutWish, UseWish } from "#shared/shop/stock-wish.ts";
import { noteEvent } from "#src/ledger/event-rows.ts";
import { findJob, type StoredJob } from "#src/ledger/job-rows.ts";
import { familyNow, isKnownLaidOut, keepLaidOut, laidOutFor, partsOf } from "#src/ledger/laid-out-rows.ts";
import { balanceOf, isKnownEntry, keepEntry, type Used, usedByJob } from "#src/ledger/stock-rows.ts";
import type { Turn } from "#src/ledger/turn.ts";

/** What a job was planned to take, what was added, and what it took; each with the shelves it may come from. */
export function readJobParts({ sql }: Turn, number: string): readonly JobPartLine[] | null {
  const stored = findJob(sql, { by: "number", number });
  return stored === null ? null : linesOf(sql, stored);
}

/** The part is in the hand, so it is always taken; where the book knew of fewer, the answer says to count again. */
export function usePart(turn: Turn, wish: UseWish): Outcome<Balance, JobPartRefusal> {
  const { sql } = turn;
  const stored = findJob(sql, { by: "number", number: wish.number });
  if (stored === null) return refuse({ reason: "no-such-job" });
  if (isKnownEntry(sql, wish.key)) return accept(balanceOf(sql, wish.shelf));
  const shelves = shelvesFor(wish.shelf.part, familyNow(sql, stored.serial));
  if (!shelves.some((shelf) => sameShelf(shelf, wish.shelf))) return refuse({ reason: "no-such-shelf" });
  if (!IN_THE_SHOP.includes(stored.job.state)) return refuse({ reason: "not-now" });
  return accept(enter(turn, wish, stored.serial, "use"));
}

/** Puts a part back on the shelf that a job did not take after all. */
export function takePartBack(turn: Turn, wish: UseWish): Outcome<Balance, JobPartRefusal> {
  const { sql } = turn;
  const stored = findJob(sql, { by: "number", number: wish.number });
  if (stored === null) return refuse({ reason: "no-such-job" });
  if (isKnownEntry(sql, wish.key)) return accept(balanceOf(sql, wish.shelf));
  if (shelfOf(wish.shelf) === undefined) return refuse({ reason: "no-such-shelf" });
  const { serial, job } = stored;
  if (!IN_THE_SHOP.includes(job.state)) return refuse({ reason: "not-now" });
  const most = usedByJob(sql, serial).find((used) => sameShelf(used, wish.shelf))?.used ?? 0;
  return wish.count > most ? refuse({ reason: "not-so-many", most }) : accept(enter(turn, wish, serial, "use-undone"));
}

/** Adds a part to what a job takes, or puts away what it does not need; only what is not used can be put away. */
export function layOutPart(turn: Turn, wish: LayOutWish): Outcome<readonly JobPartLine[], JobPartRefusal> {
  const { sql, now } = turn;
  const { part, change, staff, key } = wish;
  const stored = findJob(sql, { by: "number", number: wish.number });
  if (stored === null) return refuse({ reason: "no-such-job" });
  if (isKnownLaidOut(sql, key)) return accept(linesOf(sql, stored));
  const { serial, job } = stored;
  if (shelvesFor(part, familyNow(sql, serial)).length === 0) return refuse({ reason: "no-such-shelf" });
  if (!RESERVING.includes(job.state)) return refuse({ reason: "not-now" });
  const line = linesOf(sql, stored).find((it) => it.part === part);
  const most = line === undefined ? 0 : stillWanted(line);
  if (change < 0 && -change > most) return refuse({ reason: "not-so-many", most });
  keepLaidOut(sql, { job: serial, part, change, at: now, staff, key });
  const what = change < 0 ? "part-put-away" : "part-added";
  noteEvent(sql, serial, { at: now, who: "shop", what, staff, note: partAndCount(part, Math.abs(change)) });
  return accept(linesOf(sql, stored));
}

function enter(turn: Turn, { shelf, count, staff, key }: UseWish, job: number, kind: "use" | "use-undone"): Balance {
  const { sql, now } = turn;
  const what = kind === "use" ? "part-used" : "part-use-undone";
  noteEvent(sql, job, { at: now, who: "shop", what, staff, note: partAndCount(shelf.part, count) });
  return keepEntry(sql, { shelf, change: { kind, count }, job, at: now, staff, note: null, key });
}

function linesOf(sql: SqlStorage, { serial, job }: StoredJob): readonly JobPartLine[] {
  const family = familyNow(sql, serial);
  const used = usedByJob(sql, serial);
  const { parts } = workNow(job);
  return partsOf(parts, laidOutFor(sql, serial), byPart(used)).map((line) => ({
    ...line,
    name: nameOf(line.part),
    source: parts.find(({ part }) => part === line.part)?.source ?? null,
    shelves: SHELVES.map((shelf) => ({ ...shelf, used: used.find((it) => sameShelf(it, shelf))?.used ?? 0 }))
      // A part may have come from the other build's shelf before the bench knew better.
      .filter((shelf) => shelf.used > 0 || shelvesFor(line.part, family).some((it) => sameShelf(it, shelf)))
      .filter(({ part }) => part === line.part)
      .map((shelf) => ({ ...shelf, ...balanceOf(sql, shelf) })),
  }));
}

function byPart(used: readonly Used[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { part, used: count } of used) counts.set(part, (counts.get(part) ?? 0) + count);
  return counts;
}

const nameOf = (part: string): string => PARTS.find((it) => it.part === part)?.name ?? part;

/** @example partAndCount("lock-nut", 1) // "Lock nut × 1" */
const partAndCount = (part: string, count: number): string => `${nameOf(part)} × ${count}`;
