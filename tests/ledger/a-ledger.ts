import { runInDurableObject } from "cloudflare:test";
import { env } from "cloudflare:workers";
import type { Answers } from "#shared/craft/vocabulary.ts";
import type { BookingWish, HoldWish } from "#shared/shop/booking.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";

/** Written so that `runInDurableObject` still sees which class is behind it. */
export type LedgerStub = ReturnType<typeof env.SHOP.getByName>;

/**
 * Monday 2040-05-07, 10:00 in New York. Far ahead of any day on which the tests run, so that an alarm that is set by
 * a test's clock never fires by itself.
 */
export const MONDAY = Date.UTC(2040, 4, 7, 14);
export const MINUTE = 60_000;
export const DAY = 86_400_000;

/** A shop of its own, with its clock standing still. */
export async function aLedger({ now = MONDAY } = {}): Promise<LedgerStub> {
  const stub = env.SHOP.getByName(`shop-${fresh()}`);
  await setClock(stub, now);
  return stub;
}

/** An instance that was evicted comes back with the system's clock: set it again before asking. */
export const setClock = (stub: LedgerStub, now: number) =>
  runInDurableObject(stub, (ledger) => {
    ledger.clock = { now: () => now };
  });

export async function changeSettings(stub: LedgerStub, change: (settings: ShopSettings) => ShopSettings) {
  const { version, settings } = await stub.settings();
  const saved = await stub.saveSettings({
    ifVersion: version,
    settings: change(settings) as ShopSettings,
    staff: "Manager",
  });
  if (!saved.ok) throw new Error("The settings were not saved");
}

/** Everything that the database holds, as text. */
export const storedText = (stub: LedgerStub) =>
  runInDurableObject(stub, (_, { storage: { sql } }) => {
    const tables = sql
      .exec<{ name: string }>(
        "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE '\\_%' ESCAPE '\\'",
      )
      .toArray();
    return tables.map(({ name }) => JSON.stringify(sql.exec(`SELECT * FROM "${name}"`).toArray())).join("\n");
  });

/** How many rows a table has. */
export const countRows = (stub: LedgerStub, table: string) =>
  runInDurableObject(stub, (_, { storage }) =>
    Number(storage.sql.exec(`SELECT count(*) AS n FROM ${table}`).one()["n"]),
  );

/** Quanta that are taken, and by whom. */
export const takenQuanta = (stub: LedgerStub) =>
  runInDurableObject(stub, (_, { storage }) =>
    storage.sql
      .exec<{ bench: string; quantum: number; claim: string }>("SELECT * FROM bench_time ORDER BY bench, quantum")
      .toArray(),
  );

/** Rebuilt a month ago, ridden gently, nothing noticed: not due. */
export const dullAnswers: Answers = {
  unitFamily: "set-nut",
  builtYear: 2038,
  engineHours: 110,
  riding: "easy",
  mods: { engine: false, charger: false, boostPsi: null, changedSinceSlip: false },
  lastRebuild: { when: "known", date: "2040-04-01", engineHours: 100, slipLeftAt: null },
  lastSlipSet: { when: "never", date: null, engineHours: null, slipLeftAt: null },
  washers: "metal",
  symptoms: [],
  notLooked: false,
};
export const someAnswers = (change: Partial<Answers> = {}): Answers => ({ ...dullAnswers, ...change });
export const rebuildAnswers = someAnswers({ symptoms: ["whine"] });
export const urgentAnswers = someAnswers({ symptoms: ["metal-in-oil"] });

export function aHoldWish(offer: string, change: Partial<HoldWish> = {}): HoldWish {
  return {
    id: `hold-${fresh()}`,
    offer,
    verdict: "slip-check",
    answers: null,
    source: `source-${fresh()}`,
    draft: null,
    wishKey: aWishKey("hold"),
    ...change,
  };
}

export function aBookingWish(hold: string, change: Partial<BookingWish> = {}): BookingWish {
  return {
    id: `booking-${fresh()}`,
    hold,
    answers: dullAnswers,
    contact: { name: "Ada Quill", phone: "+12025550143", email: "ada.quill@owner.example" },
    returnTo: { lines: ["7 Reed Street"], postcode: "00000", region: "Ottersby", country: "US" },
    serial: "SN-0042",
    goAheadMinor: 60_000,
    priceMinor: null,
    by: "owner",
    reminders: { text: "Tell me by text when the next service is due." },
    ownerLinkHash: `hash-${fresh()}`,
    draft: null,
    wishKey: aWishKey("book"),
    ...change,
  };
}

export const aWishKey = (scope: string) => ({ scope, key: `key-${fresh()}`, fingerprint: "f1" });

/** The soonest offer's id. */
export async function soonest(stub: LedgerStub, verdict: HoldWish["verdict"] = "slip-check"): Promise<string> {
  const [offer] = await stub.offers({ verdict });
  if (offer === undefined) throw new Error("No offer");
  return offer.id;
}

/** Holds the soonest time, or another, and books it. */
export async function aBooking(
  stub: LedgerStub,
  { offer, hold = {}, booking = {} }: { offer?: string; hold?: Partial<HoldWish>; booking?: Partial<BookingWish> } = {},
) {
  const held = await stub.hold(aHoldWish(offer ?? (await soonest(stub, hold.verdict)), hold));
  if (!held.ok) throw new Error(`Not held: ${JSON.stringify(held.refusal)}`);
  const wish = aBookingWish(held.value.id, booking);
  const booked = await stub.book(wish);
  if (!booked.ok) throw new Error(`Not booked: ${JSON.stringify(booked.refusal)}`);
  return { booking: booked.value.id, number: booked.value.jobNumber, linkHash: wish.ownerLinkHash, wish };
}

let made = 0;
const fresh = () => `${made++}`;
