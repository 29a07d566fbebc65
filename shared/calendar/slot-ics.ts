import { escapeText, foldLine, utcStamp } from "#shared/calendar/ics-line.ts";

/** One booked slot as a calendar program is to see it. */
export type SlotEvent = {
  /** Random, and the same for the life of the booking: RFC 7986 §5.3 wants nothing in it that names anybody. */
  readonly uid: string;
  /** 0 at first; one more each time that the slot is moved or cancelled. */
  readonly sequence: number;
  readonly status: "confirmed" | "cancelled";
  /** When the booking last changed; epoch milliseconds, like the two after it. */
  readonly changedAt: number;
  readonly startsAt: number;
  readonly endsAt: number;
  readonly summary: string;
  readonly description: string;
  readonly location: string;
  readonly url: string;
};

/** An iCalendar object (RFC 5545) with that one event, in UTC: a single slot needs no table of its zone's law. */
export function slotIcs(event: SlotEvent): string {
  return [
    "BEGIN:VCALENDAR",
    "VERSION:2.0",
    "PRODID:-//Slipbench//Bench slot//EN",
    "BEGIN:VEVENT",
    `UID:${escapeText(event.uid)}`,
    `DTSTAMP:${utcStamp(event.changedAt)}`,
    `DTSTART:${utcStamp(event.startsAt)}`,
    `DTEND:${utcStamp(event.endsAt)}`,
    `SEQUENCE:${event.sequence}`,
    `STATUS:${event.status.toUpperCase()}`,
    `SUMMARY:${escapeText(event.summary)}`,
    `DESCRIPTION:${escapeText(event.description)}`,
    `LOCATION:${escapeText(event.location)}`,
    `URL:${event.url}`,
    "END:VEVENT",
    "END:VCALENDAR",
  ]
    .map(foldLine)
    .join("");
}
