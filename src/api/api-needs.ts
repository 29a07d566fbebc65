import type { Outcome } from "#shared/basics/outcome.ts";
import type { SlotBoard } from "#shared/calendar/board-schema.ts";
import type {
  Booking,
  BookingRefusal,
  BookingWish,
  ChangeRefusal,
  Hold,
  HoldRefusal,
  HoldWish,
  Job,
  Receipt,
} from "#shared/shop/booking.ts";
import type { SettingsVersion } from "#shared/shop/shop-settings.ts";

/** What the JSON interface asks of the shop's object. */
export type ApiShop = {
  readonly settings: () => Promise<SettingsVersion>;
  readonly board: () => Promise<SlotBoard>;
  readonly hold: (wish: HoldWish) => Promise<Outcome<Hold, HoldRefusal>>;
  readonly book: (wish: BookingWish) => Promise<Outcome<Booking, BookingRefusal>>;
  readonly moveBooking: (wish: MoveWish) => Promise<Outcome<Job, ChangeRefusal>>;
  readonly cancelBooking: (wish: CancelWish) => Promise<Outcome<Job, ChangeRefusal>>;
  readonly receipt: (booking: string) => Promise<Receipt | null>;
};

export type CancelWish = { readonly booking: string; readonly linkHash: string; readonly by: "owner" };
export type MoveWish = CancelWish & { readonly offer: string };

/** What the JSON interface needs of the world. */
export type ApiNeeds = {
  readonly shop: ApiShop;
  /** Published copies: `null` where there is none, or none fresh enough. */
  readonly publishedBoard: (now: number) => Promise<SlotBoard | null>;
  readonly publishedReceipt: (booking: string) => Promise<Receipt | null>;
  readonly now: () => number;
  readonly newId: () => string;
  readonly linkKey: string;
  readonly origin: (request: Request) => string;
};
