import { DurableObject } from "cloudflare:workers";
import type { Outcome } from "#shared/basics/outcome.ts";
import type { SlotBoard } from "#shared/calendar/board-schema.ts";
import type { Offer } from "#shared/calendar/find-offers.ts";
import type { UnitFamily } from "#shared/craft/vocabulary.ts";
import type { Approval } from "#shared/job/approval.ts";
import type * as asking from "#shared/job/approval-wish.ts";
import type { BenchFindings } from "#shared/job/bench-findings.ts";
import type { DayJob } from "#shared/job/day-sheet.ts";
import type { MoveRefusal, UndoRefusal } from "#shared/job/move-refusal.ts";
import type { Photo } from "#shared/job/photo.ts";
import type * as photos from "#shared/job/photo-wish.ts";
import type { RecordCode } from "#shared/job/record-code.ts";
import type { CorrectionRefusal, CorrectionWish } from "#shared/job/record-correction.ts";
import type { CodeStanding } from "#shared/job/record-standing.ts";
import type * as records from "#shared/job/record-view.ts";
import type { StoredEntry } from "#shared/job/sheet-entry.ts";
import type { SheetView } from "#shared/job/sheet-view.ts";
import type { EntryRefusal, EntryWish } from "#shared/job/sheet-wish.ts";
import type * as shop from "#shared/shop/booking.ts";
import type { Shelf } from "#shared/shop/shelf.ts";
import type { SettingsVersion } from "#shared/shop/shop-settings.ts";
import type { StaffAccount, StaffChangeRefusal, StaffEvent } from "#shared/shop/staff-account.ts";
import type * as staff from "#shared/shop/staff-wishes.ts";
import type { StockLine } from "#shared/shop/stock.ts";
import type { Balance } from "#shared/shop/stock-book.ts";
import type * as stock from "#shared/shop/stock-wish.ts";
import type { Verdict } from "#shared/triage/verdict.ts";
import { kvBoardStore } from "#src/adapters/board-store.ts";
import { systemClock } from "#src/adapters/clock.ts";
import { logFailure } from "#src/adapters/log.ts";
import { r2PhotoStore } from "#src/adapters/photo-store.ts";
import * as passkeys from "#src/ledger/add-passkey.ts";
import { answerApproval } from "#src/ledger/answer-approval.ts";
import { askShop, replyToOwner } from "#src/ledger/approval-words.ts";
import { askOwner } from "#src/ledger/ask-owner.ts";
import { approvalsByLink, askStart } from "#src/ledger/ask-start.ts";
import { busyReader } from "#src/ledger/bench-time-rows.ts";
import { findReceipt } from "#src/ledger/booking-rows.ts";
import { type ChangeWish, cancelBooking, moveBooking } from "#src/ledger/change-booking.ts";
import { changeStaff } from "#src/ledger/change-staff.ts";
import { countParts, readShelf, readStock, receiveParts } from "#src/ledger/change-stock.ts";
import { chainReader, checkCode } from "#src/ledger/check-chain.ts";
import type { Clock } from "#src/ledger/clock.ts";
import { endOverdueApprovals, withdrawApproval } from "#src/ledger/close-approval.ts";
import { correctRecord } from "#src/ledger/correct-record.ts";
import { daySheet } from "#src/ledger/day-sheet.ts";
import { dropDraft } from "#src/ledger/draft-rows.ts";
import { dropPhotoBytes, type PhotoBytesStore } from "#src/ledger/drop-photo-bytes.ts";
import { endHoldOf, endOverdueHolds } from "#src/ledger/end-overdue-holds.ts";
import { findingsByLink } from "#src/ledger/findings-by-link.ts";
import { freshOffers } from "#src/ledger/fresh-offers.ts";
import { gathering } from "#src/ledger/gathering.ts";
import * as invitations from "#src/ledger/invitation.ts";
import { layOutPart, readJobParts, takePartBack, usePart } from "#src/ledger/job-parts.ts";
import { findJob } from "#src/ledger/job-rows.ts";
import { type AnswerWish, type KeptAnswer, keepAnswer, storedDraft } from "#src/ledger/keep-answer.ts";
import { keepEntry } from "#src/ledger/keep-entry.ts";
import {
  announcePhoto,
  keepPhoto,
  listPhotos,
  photoByLink,
  photoByNumber,
  removePhoto,
} from "#src/ledger/keep-photo.ts";
import { bringTablesUpToDate } from "#src/ledger/ledger-tables.ts";
import { listArrivals } from "#src/ledger/list-arrivals.ts";
import { makeBooking } from "#src/ledger/make-booking.ts";
import { type MoveWish, moveJob } from "#src/ledger/move-job.ts";
import { openSession } from "#src/ledger/open-session.ts";
import { PUBLISH_AFTER_MS } from "#src/ledger/publication-rows.ts";
import { type BoardStore, publishDue } from "#src/ledger/publish.ts";
import { purgeIfDue } from "#src/ledger/purge.ts";
import { chainLines, chainStanding, readRecord } from "#src/ledger/read-record.ts";
import { type ReissueRefusal, type ReissueWish, reissueLink } from "#src/ledger/reissue-link.ts";
import { riseObservations } from "#src/ledger/rise-rows.ts";
import { type SettingsRefusal, type SettingsWish, saveSettings } from "#src/ledger/save-settings.ts";
import * as sessions from "#src/ledger/session-rows.ts";
import { beginSettings, settingsReader } from "#src/ledger/settings-rows.ts";
import { sheetView } from "#src/ledger/sheet-view.ts";
import * as signIn from "#src/ledger/sign-in-by-passkey.ts";
import * as tries from "#src/ledger/sign-in-tries.ts";
import { slotBoard } from "#src/ledger/slot-board.ts";
import { newestStaffEvents } from "#src/ledger/staff-event-rows.ts";
import { allAccounts, findAccount } from "#src/ledger/staff-rows.ts";
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
  photoStore: PhotoBytesStore | null = r2PhotoStore(this.env.PHOTOS);
  readonly #settings = settingsReader(this.ctx.storage.sql);
  readonly #busy = busyReader(this.ctx.storage.sql);
  readonly #chain = chainReader(this.ctx.storage.sql);
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

  askStart(number: string): asking.AskStart | null {
    return this.#decide((turn) => askStart(turn, number));
  }

  askOwner(wish: asking.AskWish): Outcome<asking.Asked, asking.AskRefusal> {
    return this.#change((turn) => askOwner(turn, wish));
  }

  withdrawApproval(wish: asking.WithdrawWish): Outcome<asking.Asked, asking.AnswerRefusal> {
    return this.#change((turn) => withdrawApproval(turn, wish));
  }

  replyToOwner(wish: asking.ShopWord): Outcome<Approval, asking.WordRefusal> {
    return this.#change((turn) => replyToOwner(turn, wish));
  }

  approvalsByLink(linkHash: string): readonly Approval[] {
    return this.#decide((turn) => approvalsByLink(turn, linkHash));
  }

  findingsByLink(linkHash: string): BenchFindings | null {
    return this.#decide((turn) => findingsByLink(turn, linkHash));
  }

  answerApproval(wish: asking.AnswerWish): Outcome<asking.Asked, asking.AnswerRefusal> {
    return this.#change((turn) => answerApproval(turn, wish));
  }

  askShop(wish: asking.OwnerWord): Outcome<Approval, asking.WordRefusal> {
    return this.#change((turn) => askShop(turn, wish));
  }

  arrivals(): readonly shop.Arrival[] {
    return this.#decide(listArrivals);
  }

  daySheet(): readonly DayJob[] {
    return this.#decide(daySheet);
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

  openSession(wish: staff.LinkSignInWish): Outcome<staff.OpenedSession, staff.LinkSignInRefusal> {
    return this.#change((turn) => openSession(turn, wish));
  }

  failedSignIn(source: string): Outcome<number, staff.TooManyTries> {
    return this.#change((turn) => tries.beginTry(turn, source));
  }

  askToSignIn(wish: staff.AskToSignIn): Outcome<null, staff.TooManyTries> {
    return this.#change((turn) => signIn.askToSignIn(turn, wish));
  }

  tryToSignIn(wish: staff.TryToSignIn): Outcome<staff.SignInTry, staff.SignInRefusal> {
    return this.#change((turn) => signIn.tryToSignIn(turn, wish));
  }

  signInByPasskey(wish: staff.CheckedSignIn): Outcome<staff.OpenedSession, { readonly reason: "no-such-passkey" }> {
    return this.#change((turn) => signIn.signInByPasskey(turn, wish));
  }

  askForPasskey(wish: staff.AskForPasskey): staff.PasskeyHolder | null {
    return this.#change((turn) => passkeys.askForPasskey(turn, wish));
  }

  usePasskeyChallenge(wish: { readonly staff: number; readonly challenge: string }): boolean {
    return this.#decide((turn) => passkeys.usePasskeyChallenge(turn, wish));
  }

  addPasskey(wish: staff.PasskeyWish): Outcome<null, staff.PasskeyRefusal> {
    return this.#decide((turn) => passkeys.addPasskey(turn, wish));
  }

  noteInvitation(wish: staff.InvitationNote): void {
    this.#decide((turn) => invitations.noteInvitation(turn, wish));
  }

  openInvitation(link: staff.InviteLink): Outcome<staff.Invited, staff.InviteRefusal> {
    return this.#decide((turn) => invitations.openInvitation(turn, link));
  }

  askInvited(wish: staff.InviteChallenge & { readonly source: string }): Outcome<staff.Invited, staff.InviteRefusal> {
    return this.#change((turn) => invitations.askInvited(turn, wish));
  }

  useInviteChallenge(wish: staff.InviteChallenge): boolean {
    return this.#decide((turn) => invitations.useInviteChallenge(turn, wish));
  }

  join(wish: staff.JoinWish): Outcome<staff.OpenedSession, staff.JoinRefusal> {
    return this.#change((turn) => invitations.join(turn, wish));
  }

  accounts(): readonly StaffAccount[] {
    return this.#decide(allAccounts);
  }

  account(id: number): StaffAccount | null {
    return this.#decide((turn) => findAccount(turn, id));
  }

  changeStaff(wish: staff.StaffWish): Outcome<StaffAccount, StaffChangeRefusal> {
    return this.#decide((turn) => changeStaff(turn, wish));
  }

  staffEvents(): readonly StaffEvent[] {
    return this.#decide(({ sql }) => newestStaffEvents(sql));
  }

  session(sessionHash: string): sessions.Session | null {
    return this.#decide((turn) => sessions.findSession(turn, sessionHash));
  }

  closeSession(sessionHash: string): void {
    this.#decide((turn) => sessions.closeSession(turn, sessionHash));
  }

  stock(): readonly StockLine[] {
    return this.#decide(readStock);
  }

  shelf(shelf: Shelf): readonly stock.StockEntry[] {
    return this.#decide((turn) => readShelf(turn, shelf));
  }

  receiveParts(wish: stock.ReceiveWish): Outcome<Balance, stock.StockRefusal> {
    return this.#decide((turn) => receiveParts(turn, wish));
  }

  countParts(wish: stock.CountWish): Outcome<Balance, stock.StockRefusal> {
    return this.#decide((turn) => countParts(turn, wish));
  }

  jobParts(number: string): readonly stock.JobPartLine[] | null {
    return this.#decide((turn) => readJobParts(turn, number));
  }

  usePart(wish: stock.UseWish): Outcome<Balance, stock.JobPartRefusal> {
    return this.#decide((turn) => usePart(turn, wish));
  }

  takePartBack(wish: stock.UseWish): Outcome<Balance, stock.JobPartRefusal> {
    return this.#decide((turn) => takePartBack(turn, wish));
  }

  layOutPart(wish: stock.LayOutWish): Outcome<readonly stock.JobPartLine[], stock.JobPartRefusal> {
    return this.#decide((turn) => layOutPart(turn, wish));
  }

  record(number: string): records.RecordView | null {
    return this.#decide(({ sql }) => readRecord(sql, { by: "number", number }));
  }

  recordByLink(linkHash: string): records.RecordView | null {
    return this.#decide(({ sql, now }) => readRecord(sql, { by: "link", hash: linkHash, now }));
  }

  correctRecord(wish: CorrectionWish): Outcome<null, CorrectionRefusal> {
    return this.#decide((turn) => correctRecord(turn, wish));
  }

  checkCode(code: RecordCode): CodeStanding {
    return this.#decide(({ sql }) => checkCode(sql, this.#chain, code));
  }

  chainStanding(): records.ChainStanding {
    return this.#decide(({ sql }) => chainStanding(sql, this.#chain));
  }

  chainLines(after: number): records.ChainLines {
    return this.#decide(({ sql }) => chainLines(sql, after));
  }

  rises(family: UnitFamily): readonly records.JobRise[] {
    return this.#decide(({ sql }) => riseObservations(sql, family));
  }

  photos(number: string): readonly Photo[] {
    return this.#decide((turn) => listPhotos(turn, number));
  }

  photo({ number, id }: { readonly number: string; readonly id: string }): Photo | null {
    return this.#decide((turn) => photoByNumber(turn, number, id));
  }

  photoByLink({ linkHash, id }: { readonly linkHash: string; readonly id: string }): Photo | null {
    return this.#decide((turn) => photoByLink(turn, linkHash, id));
  }

  announcePhoto(wish: photos.AnnounceWish): Outcome<photos.Announced, photos.PhotoRefusal> {
    return this.#change((turn) => announcePhoto(turn, wish));
  }

  keepPhoto(wish: photos.PhotoWish): Outcome<Photo, photos.PhotoRefusal> {
    return this.#change((turn) => keepPhoto(turn, wish));
  }

  removePhoto(wish: photos.RemoveWish): Outcome<null, photos.RemoveRefusal> {
    return this.#change((turn) => removePhoto(turn, wish));
  }

  /**
   * Bears being run twice. Never throws: after a few throws the platform would drop the alarm for good. What one chore
   * stumbles over keeps no other from being done.
   */
  override async alarm(): Promise<void> {
    const decide = <Answer>(decision: (turn: Turn) => Answer): Answer => this.#decide(decision);
    const chores: readonly (() => unknown)[] = [
      () => decide(endOverdueHolds),
      () => decide(endOverdueApprovals),
      () => decide(purgeIfDue),
      () => publishDue(decide, this.boardStore, logFailure),
      () => dropPhotoBytes(decide, this.photoStore, logFailure),
    ];
    let rest = 0;
    for (const chore of chores) {
      try {
        await chore();
      } catch (error) {
        logFailure(error, "alarm");
        rest = AFTER_FAILURE_MS;
      }
    }
    this.#wakes = null;
    this.#arm(rest);
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
