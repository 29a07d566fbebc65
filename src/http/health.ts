import { isoWithOffset } from "#shared/calendar/zone-clock.ts";

/** The same as in package.json; a test holds them together. */
export const VERSION = "0.1.0";

/**
 * British Columbia keeps -07:00 all year since 2026 (IANA time zone database 2026b). A runtime that answers -08:00 here
 * has older zone data, and its dates in such zones are wrong.
 */
const NOON_IN_DECEMBER = Date.UTC(2026, 11, 15, 20);

/** What a watcher of the site needs to know, and nothing more. */
export const health = () => ({
  ok: true,
  version: VERSION,
  zoneData: { zone: "America/Vancouver", on: "2026-12-15", offset: offsetOf("America/Vancouver", NOON_IN_DECEMBER) },
});

const offsetOf = (zone: string, instant: number): string => isoWithOffset(zone, instant).slice(-"+00:00".length);
