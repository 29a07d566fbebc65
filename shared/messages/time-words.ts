/** @example dateText("2027-05-01", "en-US") // "Sat, May 1, 2027" */
export const dateText = (date: string, locale: string): string =>
  new Intl.DateTimeFormat(locale, {
    weekday: "short",
    day: "numeric",
    month: "short",
    year: "numeric",
    timeZone: "UTC",
  }).format(new Date(`${date}T00:00:00Z`));

/** An instant as the shop's clock shows it, with the zone's short name. @example "Mon, Mar 15, 2027, 9:00 AM EDT" */
export const timeText = (instant: number, zone: string, locale: string): string =>
  new Intl.DateTimeFormat(locale, {
    weekday: "short",
    day: "numeric",
    month: "short",
    year: "numeric",
    hour: "numeric",
    minute: "2-digit",
    timeZone: zone,
    timeZoneName: "short",
  }).format(instant);
