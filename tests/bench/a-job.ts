import { env } from "cloudflare:workers";
import type { Answers } from "#shared/craft/vocabulary.ts";
import type { BookingWish } from "#shared/shop/booking.ts";
import { planJob } from "#shared/shop/job-plan.ts";
import { DEMO_SHOP } from "#shared/shop/shop-settings.ts";
import { ownerToken, sha256Hex } from "#src/http/owner-link.ts";
import { fresh, LINK_KEY } from "#tests/bench/the-shop.ts";

/** Rebuilt 30 hours ago and ridden gently: nothing is due. */
export const someAnswers = (change: Partial<Answers> = {}): Answers => ({
  unitFamily: "set-nut",
  builtYear: 2026,
  engineHours: 50,
  riding: "easy",
  mods: { engine: false, charger: false, boostPsi: null, changedSinceSlip: false },
  lastRebuild: { when: "known", date: null, engineHours: 20, slipLeftAt: null },
  lastSlipSet: { when: "never", date: null, engineHours: null, slipLeftAt: null },
  washers: "metal",
  symptoms: [],
  notLooked: false,
  ...change,
});

type JobWish = Partial<Pick<BookingWish, "contact" | "returnTo" | "serial" | "goAheadMinor">> & {
  readonly answers?: Answers;
  /** Which of the offers is taken. */
  readonly offer?: number;
};

/** A job booked as an owner books it, with the owner's token. */
export async function aJob({ answers = someAnswers(), offer = 0, ...change }: JobWish = {}) {
  const shop = env.SHOP.getByName("main");
  const today = new Date(Date.now()).toISOString().slice(0, 10);
  const { verdict } = planJob(answers, today, DEMO_SHOP).judgement;
  const offers = await shop.offers({ verdict });
  const [hold, id] = [fresh(), fresh()];
  const wishKey = (scope: string) => ({ scope, key: hold, fingerprint: hold });
  const held = await shop.hold({
    id: hold,
    offer: offers[offer]!.id,
    verdict,
    answers,
    source: hold,
    draft: null,
    wishKey: wishKey("hold"),
  });
  if (!held.ok) throw new Error(`Not held: ${JSON.stringify(held.refusal)}`);
  const token = await ownerToken(LINK_KEY, id, 1);
  const booked = await shop.book({
    id,
    hold,
    answers,
    contact: { name: "Wren Calloway", phone: "+12025550143", email: "wren@shore.example" },
    returnTo: { lines: ["7 Heron Quay"], postcode: "00001", region: "Ottersby", country: "US" },
    serial: null,
    goAheadMinor: null,
    by: "owner",
    priceMinor: null,
    reminders: null,
    ownerLinkHash: await sha256Hex(token),
    draft: null,
    wishKey: wishKey("book"),
    ...change,
  });
  if (!booked.ok) throw new Error(`Not booked: ${JSON.stringify(booked.refusal)}`);
  return { number: booked.value.jobNumber, token };
}
