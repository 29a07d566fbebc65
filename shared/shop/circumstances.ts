import { wallOf } from "#shared/calendar/zone-clock.ts";
import type { Circumstances } from "#shared/intake/questions.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";

/** What the conversation has to know besides the answers: today in the shop's zone, and the setting it reads. */
export const circumstancesOf = ({ calendar, triage }: ShopSettings, now: number): Circumstances => ({
  onDate: wallOf(calendar.zone, now).date,
  ceramicUntilYear: triage.ceramicUntilYear,
});
