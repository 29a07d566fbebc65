import type { Outcome } from "#shared/basics/outcome.ts";
import type { Offer } from "#shared/calendar/find-offers.ts";
import type { QuestionId } from "#shared/intake/draft.ts";
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
import type { Shelf } from "#shared/shop/shelf.ts";
import type { SettingsVersion, ShopSettings } from "#shared/shop/shop-settings.ts";
import type { Staff } from "#shared/shop/staff.ts";
import type { StockLine } from "#shared/shop/stock.ts";
import type { Balance } from "#shared/shop/stock-book.ts";
import type {
  CountWish,
  JobPartLine,
  JobPartRefusal,
  LayOutWish,
  ReceiveWish,
  StockEntry,
  StockRefusal,
  UseWish,
} from "#shared/shop/stock-wish.ts";
import type { Verdict } from "#shared/triage/verdict.ts";

/** What the shop's pages ask of its object. */
export type BenchShop = {
  readonly settings: () => Promise<SettingsVersion>;
  readonly saveSettings: (wish: SettingsWish) => Promise<Outcome<SettingsVersion, SettingsRefusal>>;
  readonly arrivals: () => Promise<readonly Arrival[]>;
  readonly job: (number: string) => Promise<Job | null>;
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
  readonly stock: () => Promise<readonly StockLine[]>;
  readonly shelf: (shelf: Shelf) => Promise<readonly StockEntry[]>;
  readonly receiveParts: (wish: ReceiveWish) => Promise<Outcome<Balance, StockRefusal>>;
  readonly countParts: (wish: CountWish) => Promise<Outcome<Balance, StockRefusal>>;
  readonly jobParts: (number: string) => Promise<readonly JobPartLine[] | null>;
  readonly usePart: (wish: UseWish) => Promise<Outcome<Balance, JobPartRefusal>>;
  readonly takePartBack: (wish: UseWish) => Promise<Outcome<Balance, JobPartRefusal>>;
  readonly layOutPart: (wish: LayOutWish) => Promise<Outcome<readonly JobPartLine[], JobPartRefusal>>;
  readonly openSession: (wish: SessionWish) => Promise<Outcome<{ readonly expiresAt: number }, SessionRefusal>>;
  readonly session: (sessionHash: string) => Promise<Session | null>;
  readonly closeSession: (sessionHash: string) => Promise<void>;
};

/** Everything the shop's pages need from outside. */
export type BenchNeeds = {
  readonly shop: BenchShop;
  /** Epoch milliseconds. */
  readonly now: () => number;
  readonly linkKey: string;
  /** Where the public reaches the site. */
  readonly origin: (request: Request) => string;
  /** At least 128 random bits, as text that fits a URL. */
  readonly newId: () => string;
};

export type OffersAsk = { readonly verdict: Verdict; readonly from?: string; readonly unitHere?: boolean };

export type SettingsWish = { readonly ifVersion: number; readonly settings: ShopSettings };
export type SettingsRefusal = { readonly reason: "changed-meanwhile"; readonly version: number };

/** The shop changes a booking by its id alone; only owners come with a link. */
export type ShopChange = { readonly booking: string; readonly linkHash: ""; readonly by: "shop" };

/** `generation` is the new link's: one more than the job's. */
export type ReissueWish = { readonly number: string; readonly generation: number; readonly linkHash: string };
export type ReissueRefusal = { readonly reason: "no-such-job" } | { readonly reason: "changed-meanwhile" };

export type KeptAnswer = { readonly tokenHash: string; readonly question: QuestionId; readonly answer: unknown };

export type Session = { readonly expiresAt: number; readonly staff: Staff };
export type SessionWish = { readonly nonce: string; readonly nonceExpires: number; readonly sessionHash: string };
export type SessionRefusal = { readonly reason: "link-used" } | { readonly reason: "link-expired" };
