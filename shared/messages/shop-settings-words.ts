/** The settings page: what each field is called and what it takes. Rules bring their own words and sources. */
export type SettingWords = { readonly label: string; readonly accepts?: string };

export const SETTINGS = {
  title: "Settings",
  version: (version: number, savedAt: string) => `Version ${version}, saved ${savedAt}.`,
  keeps: "Saving makes a new version. Jobs keep the version that judged them.",
  button: "Save the settings",
  saved: (version: number) => `Saved as version ${version}.`,
  mend: (count: number) => (count === 1 ? "1 entry cannot be saved yet" : `${count} entries cannot be saved yet`),
  kept: "Nothing was saved. What you typed is kept below.",
  accepted: (accepted: string) => `Accepted: ${accepted}.`,
  changedMeanwhile: (version: number) =>
    `Somebody saved version ${version} while this page was open. Nothing you typed is lost or saved. Look at the new version in another tab, then save again to put yours in its place.`,
  showNew: "Open the new version",
  source: (source: string) => `Source of the default: ${source}.`,
} as const;

export const SETTING_GROUPS = {
  front: "Shop front and ship-to",
  hours: "Opening hours and closures",
  benches: "Benches and bench time",
  prices: "Prices and usual time",
  bench: "At the bench",
  triage: "Rules of the verdict",
  slip: "Rules of the slip",
  clutchSetNut: "The clutch of a set-nut unit",
  clutchShimStack: "The clutch of a shim-stack unit",
} as const;
export type SettingGroup = keyof typeof SETTING_GROUPS;

const MEASURE = "From these the bench is advised where to turn the nut or which shims to use. Measure your own units.";
const OURS = "What the shop has not changed is a default of this project.";

/** Where the first values of a group come from, where that is the same for all of them. */
export const SETTING_GROUP_NOTES: Readonly<Partial<Record<SettingGroup, string>>> = {
  front: "The first entries are invented. Put in your own before anybody books.",
  hours: OURS,
  benches: OURS,
  prices: "The first prices are invented. Put in your own before anybody books.",
  clutchSetNut: MEASURE,
  clutchShimStack: MEASURE,
};

export const FRONT_WORDS = {
  name: { label: "Name of the shop" },
  lines: { label: "Ship-to, name and street", accepts: "1 to 4 lines" },
  postcode: { label: "Ship-to, postcode" },
  region: { label: "Ship-to, town and state or region" },
  shipToCountry: { label: "Ship-to, country", accepts: "two capital letters, such as US" },
  phone: { label: "Phone for urgent cases" },
  email: { label: "Email", accepts: "an email address" },
  country: { label: "Phone numbers without a country code are dialled in", accepts: "two capital letters, such as US" },
  locale: { label: "How dates and prices are written", accepts: "a language tag, such as en-US" },
} as const satisfies Readonly<Record<string, SettingWords>>;

export const WEEKDAY_WORDS = {
  1: "Monday",
  2: "Tuesday",
  3: "Wednesday",
  4: "Thursday",
  5: "Friday",
  6: "Saturday",
  7: "Sunday",
} as const;

export const CALENDAR_WORDS = {
  zone: { label: "Time zone", accepts: "a time zone of the IANA database, such as America/New_York" },
  openings: { accepts: "times on the quarter-hour, such as 08:00-12:00, 13:00-17:00; empty = closed" },
  closures: {
    label: "Closures",
    accepts: "one a line, first and last day and why, such as 2027-07-04..2027-07-05 Holiday",
  },
  benches: {
    label: "Benches",
    accepts: "one a line, an id and a name, such as b1 Bench 1; the id stays with its jobs, so change only the name",
  },
  minutes: { label: "Bench time, minutes", accepts: "a whole number of quarter-hours, in minutes" },
  leadStandard: { label: "Working days from posting to the bench", accepts: "0 to 30" },
  leadUrgent: { label: "The same for urgent jobs", accepts: "0 to 30, and not more than the other" },
  holdMinutes: { label: "A time is held for, minutes", accepts: "1 to 120" },
  offerWindowDays: { label: "Offers lie within, days", accepts: "1 to 90" },
  changeUntilWorkingDays: {
    label: "Owners may move or cancel until, working days before",
    accepts: "0 to 30",
  },
  openHoldsPerSource: { label: "Open holds from one address at most", accepts: "1 or more" },
} as const;

export const PRICE_WORDS = {
  currency: { label: "Currency", accepts: "three capital letters, such as USD" },
  price: { label: "Price", accepts: "an amount, such as 125 or 125.50" },
  usualDays: { label: "Usual working days at the shop", accepts: "a whole number from 1 to 90" },
} as const satisfies Readonly<Record<string, SettingWords>>;

export const BENCH_WORDS = {
  needles: {
    label: "Needle bearings in the gear",
    accepts: "a whole number from 1 to 200; empty = not known, the count found on opening is taken",
  },
  approvalDays: { label: "An owner has this long to decide, days", accepts: "a whole number from 1 to 30" },
  spareParts: { label: "Spare of each part to keep on the shelf", accepts: "a whole number from 0 to 100" },
  orderAheadDays: { label: "Parts are ordered ahead for, days", accepts: "a whole number from 1 to 90" },
} as const satisfies Readonly<Record<string, SettingWords>>;

/** What could not be read at all, before any rule looked at it. */
export const UNREADABLE = {
  number: "a number, such as 12.5",
  numberOrNone: "a number, such as 25; empty = not known",
  openings: CALENDAR_WORDS.openings.accepts,
  closures: CALENDAR_WORDS.closures.accepts,
  benches: CALENDAR_WORDS.benches.accepts,
  price: PRICE_WORDS.price.accepts,
} as const;
