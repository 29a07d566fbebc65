import { DurableObject } from "cloudflare:workers";
import type { Outcome } from "#shared/basics/outcome.ts";
import type { SlotBoard } from "#shared/calendar/board-schema.ts";
import type { Offer } from "#shared/calendar/find-offers.ts";
import type { MoveRefusal, UndoRefusal } from "#shared/job/move-refusal.ts";
import type { StoredEntry } from "#shared/job/sheet-entry.ts";
import type { SheetView } from "#shared/job/sheet-view.ts";
import type { EntryRefusal, EntryWish } from "#shared/job/sheet-wish.ts";
import type * as shop from "#shared/shop/booking.ts";
import type { SettingsVersion } from "#shared/shop/shop-settings.ts";
import type { Verdict } from "#shared/triage/verdict.ts";
import { kvBoardStore } from "#src/adapters/board-store.ts";
import { systemClock } from "#src/adapters/clock.ts";
import { logFailure } from "#src/adapters/log.ts";
import { busyReader } from "#src/ledger/bench-time-rows.ts";
import { findReceipt } from "#src/ledger/booking-rows.ts";
import { type ChangeWish, cancelBooking, moveBooking } from "#src/ledger/change-booking.ts";
import type { Clock } from "#src/ledger/clock.ts";
import { dropDraft } from "#src/ledger/draft-rows.ts";
import { endHoldOf, endOverdueHolds } from "#src/ledger/end-overdue-holds.ts";
import { freshOffers } from "#src/ledger/fresh-offers.ts";
import { gathering } from "#src/ledger/gathering.ts";
import { findJob } from "#src/ledger/job-rows.ts";
import { type AnswerWish, type KeptAnswer, keepAnswer, storedDraft } from "#src/ledger/keep-answer.ts";
import { keepEntry } from "#src/ledger/keep-entry.ts";
import { bringTablesUpToDate } from "#src/ledger/ledger-tables.ts";
import { listArrivals } from "#src/ledger/list-arrivals.ts";
import { makeBooking } from "#src/ledger/make-booking.ts";
import { type MoveWish, moveJob } from "#src/ledger/move-job.ts";
import { type OpenedSession, openSession, type SessionRefusal, type SessionWish } from "#src/ledger/open-session.ts";
import { PUBLISH_AFTER_MS } from "#src/ledger/publication-rows.ts";
import { type BoardStore, publishDue } from "#src/ledger/publish.ts";
import { purgeIfDue } from "#src/ledger/purge.ts";
import { type ReissueRefusal, type ReissueWish, reissueLink } from "#src/ledger/reissue-link.ts";
import { type SettingsRefusal, type SettingsWish, saveSettings } from "#src/ledger/save-settings.ts";
import * as sessions from "#src/ledger/session-rows.ts";
import { beginSettings, settingsReader } from "#src/ledger/settings-rows.ts";
import { sheetView } from "#src/ledger/sheet-view.ts";
import { slotBoard } from "#src/ledger/slot-board.ts";
import { takeHold } from "#src/ledger/take-hold.ts";
import type { Turn } from "#src/ledger/turn.ts";
import { type UndoWish, undoMove } from "#src/ledger/undo-move.ts";
import { wakeAt } from "#src/ledger/wake-at.ts";
import { noteZoneLaw } from "#src/ledger/zone-law.ts";

type OffersAsk = { readonly verdict: Verdict; readonly from?: string; readonly unitHere?: boolean };

/** After a failure that nobody foresaw, the alarm waits this long before it looks again. */
const AFTER_FAILURE_MS = 60_000;

/** The shop's object, the only writer of its data. Each method is one decision: read rows, decide, write rows. */
export class ShopLedger extends DurableObject<Env> {
  clock: Clock = systemClock;
  boardStore: BoardStore = kvBoardStore(this.env.BOARD);
  readonly #settings = settingsReader(this.ctx.storage.sql);
  readonly #busy = busyReader(this.ctx.storage.sql);
  /** Until all before is on disk. Awaited before a decision that many may want at once; within one nothing ever is. */
  readonly #gathered = gathering(() => this.ctx.storage.sync());
  /** When the platform will wake this object; null = not known to this instance. */
  #wakes: number | null = null;

  constructor(ctx: DurableObjectState, env: Env) {
    super(ctx, env);
    bringTablesUpToDate(ctx.storage);
    this.#decide((turn) => {
      beginSettings(turn.sql, turn.now);
      noteZoneLaw(turn);
    });
    void ctx.blockConcurrencyWhile(async () => {
      if ((await ctx.storage.getAlarm()) === null) this.#arm();
    });
  }

  settings(): SettingsVersion {
    return this.#decide((turn) => turn.settings());
  }

  saveSettings(wish: SettingsWish): Outcome<SettingsVersion, SettingsRefusal> {
    return this.#change((turn) => saveSettings(turn, wish));
  }

  board(): SlotBoard {
    return this.#change(slotBoard);
  }

  offers({ from, ...ask }: OffersAsk): readonly Offer[] {
    return this.#change((turn) => freshOffers(turn, { ...ask, day: from ?? null }));
  }

  async hold(wish: shop.HoldWish): Promise<Outcome<shop.Hold, shop.HoldRefusal>> {
    await this.#gathered();
    return this.#change((turn) => takeHold(turn, wish, this.#mostHolds(turn)));
  }

  async book(wish: shop.BookingWish): Promise<Outcome<shop.Booking, shop.BookingRefusal>> {
    await this.#gathered();
    return this.#change((turn) => makeBooking(turn, wish));
  }

  moveBooking(wish: ChangeWish & { readonly offer: string }): Outcome<shop.Job, shop.ChangeRefusal> {
    return this.#change((turn) => moveBooking(turn, wish));
  }

  cancelBooking(wish: ChangeWish): Outcome<shop.Job, shop.ChangeRefusal> {
    return this.#change((turn) => cancelBooking(turn, wish));
  }

  moveJob(wish: MoveWish): Outcome<shop.Job, MoveRefusal> {
    return this.#change((turn) => moveJob(turn, wish));
  }

  undoMove(wish: UndoWish): Outcome<shop.Job, UndoRefusal> {
    return this.#change((turn) => undoMove(turn, wish));
  }

  job(number: string): shop.Job | null {
    return this.#decide(({ sql }) => findJob(sql, { by: "number", number })?.job ?? null);
  }

  jobByLink(linkHash: string): shop.Job | null {
    return this.#decide(({ sql, now }) => findJob(sql, { by: "link", hash: linkHash, now })?.job ?? null);
  }

  reissueLink(wish: ReissueWish): Outcome<shop.Job, ReissueRefusal> {
    return this.#decide((turn) => reissueLink(turn, wish));
  }

  sheet(number: string): SheetView | null {
    return this.#decide((turn) => sheetView(turn, number));
  }

  keepEntry(wish: EntryWish): Outcome<StoredEntry, EntryRefusal> {
    return this.#change((turn) => keepEntry(turn, wish));
  }

  arrivals(): readonly shop.Arrival[] {
    return this.#decide(listArrivals);
  }

  receipt(bookingId: string): shop.Receipt | null {
    return this.#decide(({ sql }) => findReceipt(sql, bookingId));
  }

  draft(tokenHash: string): shop.StoredDraft | null {
    return this.#decide((turn) => storedDraft(turn, tokenHash));
  }

  keepAnswer(wish: AnswerWish): Outcome<KeptAnswer, { readonly reason: "too-many-drafts" }> {
    return this.#change((turn) => keepAnswer(turn, wish));
  }

  forgetDraft(tokenHash: string): void {
    this.#change((turn) => {
      endHoldOf(turn, tokenHash);
      dropDraft(turn.sql, tokenHash);
    });
  }

  openSession(wish: SessionWish): Outcome<OpenedSession, SessionRefusal> {
    return this.#change((turn) => openSession(turn, wish));
  }

  session(sessionHash: string): sessions.Session | null {
    return this.#decide((turn) => sessions.findSession(turn, sessionHash));
  }

  closeSession(sessionHash: string): void {
    this.#decide((turn) => sessions.closeSession(turn, sessionHash));
  }

  /** Bears being run twice. Never throws: after a few throws the platform would drop the alarm for good. */
  override async alarm(): Promise<void> {
    let rest = 0;
    try {
      this.#decide(endOverdueHolds);
      this.#decide(purgeIfDue);
      await publishDue((decision) => this.#decide(decision), this.boardStore, logFailure);
    } catch (error) {
      logFailure(error, "alarm");
      rest = AFTER_FAILURE_MS;
    } finally {
      this.#wakes = null;
      this.#arm(rest);
    }
  }

  /** One transaction without a pause: what is read stays true until all is written, and a bug leaves nothing half done. */
  #decide<Answer>(decision: (turn: Turn) => Answer): Answer {
    const { storage, id } = this.ctx;
    const turn = {
      sql: storage.sql,
      settings: this.#settings,
      busy: this.#busy,
      now: this.clock.now(),
      shop: id.name ?? "main",
    };
    return storage.transactionSync(() => decision(turn));
  }

  #change<Answer>(decision: (turn: Turn) => Answer): Answer {
    const answer = this.#decide(decision);
    this.#arm();
    return answer;
  }

  /** A waking that comes soon is early enough for anything: the alarm then works out the next one. */
  #arm(rest = 0): void {
    const soon = this.clock.now() + PUBLISH_AFTER_MS;
    if (this.#wakes !== null && this.#wakes <= soon) return;
    const at = wakeAt(this.ctx.storage.sql, this.clock.now());
    if (at === null || (this.#wakes !== null && this.#wakes <= at)) return;
    this.#wakes = Math.max(at, this.clock.now() + rest);
    this.ctx.waitUntil(this.ctx.storage.setAlarm(this.#wakes));
  }

  #mostHolds({ settings }: Turn): number {
    return Number(this.env.OPEN_HOLDS_PER_SOURCE) || settings().settings.calendar.openHoldsPerSource;
  }
}
