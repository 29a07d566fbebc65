import type { Outcome } from "#shared/basics/outcome.ts";
import type { Offer } from "#shared/calendar/find-offers.ts";
import type { QuestionId } from "#shared/intake/draft.ts";
import type { DayJob } from "#shared/job/day-sheet.ts";
import type { JobMoveName } from "#shared/job/job-moves.ts";
import type { MoveRefusal, UndoRefusal } from "#shared/job/move-refusal.ts";
import type { StoredEntry } from "#shared/job/sheet-entry.ts";
import type { SheetView } from "#shared/job/sheet-view.ts";
import type { EntryRefusal, EntryWish } from "#shared/job/sheet-wish.ts";
import type {
  Arrival,
  Booking,
  BookingRefusal,
  BookingWish,
  ChangeRefusal,
  Hold,
  HoldRefusal,
  HoldWish,
  Job,
  StoredDraft,
} from "#shared/shop/booking.ts";
import type { JobState } from "#shared/shop/job-state.ts";
import type { SettingsVersion, ShopSettings } from "#shared/shop/shop-settings.ts";
import type { Staff } from "#shared/shop/staff.ts";
import type { Verdict } from "#shared/triage/verdict.ts";
import type { AskShop } from "#src/bench/approval/ask-needs.ts";
import type { PartsShop } from "#src/bench/parts/parts-needs.ts";
import type { PhotoShop } from "#src/bench/photos/photo-needs.ts";
import type { RecordShop } from "#src/bench/record/record-needs.ts";
import type { StaffShop } from "#src/bench/staff/staff-needs.ts";
import type { PhotoStore } from "#src/http/photo-store.ts";

/** What the shop's pages ask of its object. */
export type BenchShop = AskShop &
  StaffShop &
  RecordShop &
  PartsShop &
  PhotoShop & {
    readonly settings: () => Promise<SettingsVersion>;
    readonly saveSettings: (wish: SettingsWish) => Promise<Outcome<SettingsVersion, SettingsRefusal>>;
    readonly arrivals: () => Promise<readonly Arrival[]>;
    readonly job: (number: string) => Promise<Job | null>;
    readonly daySheet: () => Promise<readonly DayJob[]>;
    readonly moveJob: (wish: MoveWish) => Promise<Outcome<Job, MoveRefusal>>;
    readonly undoMove: (wish: UndoWish) => Promise<Outcome<Job, UndoRefusal>>;
    readonly sheet: (number: string) => Promise<SheetView | null>;
    readonly keepEntry: (wish: EntryWish) => Promise<Outcome<StoredEntry, EntryRefusal>>;
    readonly offers: (ask: OffersAsk) => Promise<readonly Offer[]>;
    readonly moveBooking: (wish: ShopChange & { readonly offer: string }) => Promise<Outcome<Job, ChangeRefusal>>;
    readonly cancelBooking: (wish: ShopChange) => Promise<Outcome<Job, ChangeRefusal>>;
    readonly reissueLink: (wish: ReissueWish) => Promise<Outcome<Job, ReissueRefusal>>;
    readonly keepAnswer: (wish: KeptAnswer) => Promise<Outcome<unknown, { readonly reason: "too-many-drafts" }>>;
    readonly draft: (tokenHash: string) => Promise<StoredDraft | null>;
    readonly hold: (wish: HoldWish) => Promise<Outcome<Hold, HoldRefusal>>;
    readonly book: (wish: BookingWish) => Promise<Outcome<Booking, BookingRefusal>>;
    readonly session: (sessionHash: string) => Promise<Session | null>;
    readonly closeSession: (sessionHash: string) => Promise<void>;
  };

/** Everything the shop's pages need from outside. */
export type BenchNeeds = {
  readonly shop: BenchShop;
  /** Epoch milliseconds. */
  readonly now: () => number;
  readonly linkKey: string;
  /** Where photos lie; null = nowhere, so photos are switched off. */
  readonly photoStore: PhotoStore | null;
  /** Where the public reaches the site. */
  readonly origin: (request: Request) => string;
  /** Who asks, as a keyed hash: for caps. */
  readonly sourceOf: (request: Request) => Promise<string>;
  /** At least 128 random bits, as text that fits a URL. */
  readonly newId: () => string;
};

export type OffersAsk = { readonly verdict: Verdict; readonly from?: string; readonly unitHere?: boolean };

/** `staff` = who saves them, by name. */
export type SettingsWish = { readonly ifVersion: number; readonly settings: ShopSettings; readonly staff: string };
export type SettingsRefusal = { readonly reason: "changed-meanwhile"; readonly version: number };

/** `staff` = who moves it, by name; `ifState` = the state that the page showed. */
export type MoveWish = {
  readonly number: string;
  readonly move: JobMoveName;
  readonly staff: string;
  readonly note: string | null;
  readonly ifState: JobState;
};
export type UndoWish = Omit<MoveWish, "move" | "note"> & { readonly note: string };

/** The shop changes a booking by its id alone; only owners come with a link. */
export type ShopChange = {
  readonly booking: string;
  readonly linkHash: "";
  readonly by: "shop";
  readonly staff: string;
};

/** `generation` is the new link's: one more than the job's. */
export type ReissueWish = {
  readonly number: string;
  readonly generation: number;
  readonly linkHash: string;
  readonly staff: string;
};
export type ReissueRefusal = { readonly reason: "no-such-job" } | { readonly reason: "changed-meanwhile" };

export type KeptAnswer = { readonly tokenHash: string; readonly question: QuestionId; readonly answer: unknown };

export type Session = { readonly expiresAt: number; readonly staff: Staff };
