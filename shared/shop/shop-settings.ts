import * as z from "zod";
import { CalendarSettingsSchema, DEFAULT_CALENDAR } from "#shared/calendar/calendar-settings.ts";
import { BENCH_DEFAULTS, BenchSettingsSchema } from "#shared/shop/bench-settings.ts";
import { AddressSchema, CountrySchema } from "#shared/shop/people.ts";
import { DEMO_PRICES, PriceSettingsSchema } from "#shared/shop/prices.ts";
import { CLUTCH_DEFAULTS, ClutchSettingsSchema } from "#shared/slip/clutch-settings.ts";
import { SLIP_DEFAULTS, SlipSettingsSchema } from "#shared/slip/slip-settings.ts";
import { TRIAGE_DEFAULTS, TriageSettingsSchema } from "#shared/triage/triage-settings.ts";

/** Who the shop is, as owners see it. */
export const ShopFrontSchema = z.strictObject({
  name: z.string().trim().min(1).max(80),
  /** Where units are sent; the address is also the first line of every job tag's ship-to. */
  shipTo: AddressSchema,
  /** For stop-riding cases: reached at once. */
  phone: z.string().trim().min(3).max(40),
  email: z.email().max(254),
  /** Phone numbers without a country code are read as dialled here. */
  country: CountrySchema,
  /** BCP 47: how prices and dates are written. */
  locale: z.string().regex(/^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$/),
});

/** All that a shop can change, in one versioned document. A job keeps the version that judged it. */
export const ShopSettingsSchema = z.strictObject({
  front: ShopFrontSchema,
  calendar: CalendarSettingsSchema,
  prices: PriceSettingsSchema,
  triage: TriageSettingsSchema,
  slip: SlipSettingsSchema,
  // Settings that were saved before there were these start from the defaults.
  bench: BenchSettingsSchema.prefault(BENCH_DEFAULTS),
  clutch: ClutchSettingsSchema.prefault(CLUTCH_DEFAULTS),
});
export type ShopSettings = z.infer<typeof ShopSettingsSchema>;

/** A saved state of the settings. Versions count from 1 and are never edited. */
export type SettingsVersion = {
  readonly version: number;
  readonly savedAt: number;
  readonly settings: ShopSettings;
};

/** Our invented shop on an invented lake; what a new shop starts from until it saves its own. */
export const DEMO_SHOP: ShopSettings = {
  front: {
    name: "Ottersby Lake Clutch Bench",
    shipTo: {
      lines: ["Ottersby Lake Clutch Bench", "4 Slipway Lane"],
      postcode: "00000",
      region: "Ottersby",
      country: "US",
    },
    phone: "+1 202-555-0100",
    email: "bench@ottersby-lake.example",
    country: "US",
    locale: "en-US",
  },
  calendar: DEFAULT_CALENDAR,
  prices: DEMO_PRICES,
  triage: TRIAGE_DEFAULTS,
  slip: SLIP_DEFAULTS,
  bench: BENCH_DEFAULTS,
  clutch: CLUTCH_DEFAULTS,
};
