import { wallOf } from "#shared/calendar/zone-clock.ts";
import type { ReadBusy } from "#src/ledger/bench-time-rows.ts";
import { raiseBoardVersion } from "#src/ledger/counter-rows.ts";
import { mustPublish } from "#src/ledger/publication-rows.ts";
import type { ReadSettings } from "#src/ledger/settings-rows.ts";

/** One turn of the object: its rows as they are, at one moment. Every decision is made within one turn. */
export type Turn = {
  readonly sql: SqlStorage;
  readonly settings: ReadSettings;
  readonly busy: ReadBusy;
  /** Epoch milliseconds. */
  readonly now: number;
  /** The object's name. */
  readonly shop: string;
};

export const boardKey = (shop: string): string => `board:${shop}`;
export const receiptKey = (booking: string): string => `receipt:${booking}`;

/** Called with every change of bench time or of the settings. */
export function noteBoardChange({ sql, shop, now }: Turn): void {
  mustPublish(sql, { key: boardKey(shop), subject: "", version: raiseBoardVersion(sql) }, now);
}

export function noteReceiptChange({ sql, now }: Turn, booking: string, version: number): void {
  mustPublish(sql, { key: receiptKey(booking), subject: booking, version }, now);
}

/** The shop's calendar date. */
export const today = ({ settings, now }: Turn): string => wallOf(settings().settings.calendar.zone, now).date;
