import type { Answers } from "#shared/craft/vocabulary.ts";
import type { BookingWish, HoldWish } from "#shared/shop/booking.ts";

const DAY_MS = 86_400_000;

/** The same owner again and again, under ids and hashes of the lengths that real ones have. */
export type Owner = { readonly draft: string; readonly hold: HoldWish; readonly booking: BookingWish };

export function anOwner(offer: string, now: number): Owner {
  const draft = aHash();
  const hold = anId();
  const answers = slipCheckAnswers(now);
  return {
    draft,
    hold: {
      id: hold,
      offer,
      verdict: "slip-check",
      answers,
      source: aHash(),
      draft,
      wishKey: { scope: "POST /api/holds", key: anId(), fingerprint: aHash() },
    },
    booking: {
      id: anId(),
      hold,
      answers,
      contact: { name: "Perpetua Marsh", phone: "+12025550143", email: "perpetua.marsh@owner.example" },
      returnTo: { lines: ["7 Reed Street"], postcode: "00000", region: "Ottersby", country: "US" },
      serial: "SN-0042",
      goAheadMinor: 60_000,
      priceMinor: null,
      by: "owner",
      reminders: { text: "Tell me by text when the next service is due." },
      ownerLinkHash: aHash(),
      draft,
      wishKey: { scope: "POST /api/bookings", key: anId(), fingerprint: aHash() },
    },
  };
}

/** Rebuilt and set, and ridden past the slip's interval since. */
export function slipCheckAnswers(now: number): Answers {
  const daysAgo = (days: number) => new Date(now - days * DAY_MS).toISOString().slice(0, 10);
  return {
    unitFamily: "set-nut",
    builtYear: new Date(now).getUTCFullYear() - 3,
    engineHours: 146,
    riding: "hard",
    mods: { engine: false, charger: false, boostPsi: null, changedSinceSlip: false },
    lastRebuild: { when: "known", date: daysAgo(300), engineHours: 60, slipLeftAt: 13.5 },
    lastSlipSet: { when: "known", date: daysAgo(150), engineHours: 90, slipLeftAt: 13.5 },
    washers: "metal",
    symptoms: ["limp-mode"],
    notLooked: false,
  };
}

/** As long and as random as the ids that the worker makes. */
const anId = (): string => crypto.randomUUID().replaceAll("-", "").slice(0, 22);
const aHash = (): string => (crypto.randomUUID() + crypto.randomUUID()).replaceAll("-", "");
