import * as fc from "fast-check";
import ICAL from "ical.js";
import { describe, expect, it } from "vitest";
import { escapeText, foldLine, utcStamp } from "#shared/calendar/ics-line.ts";
import { type SlotEvent, slotIcs } from "#shared/calendar/slot-ics.ts";
import { at } from "#tests/calendar/a-calendar.ts";

const octets = (text: string) => new TextEncoder().encode(text).length;
const anEvent = (different: Partial<SlotEvent> = {}): SlotEvent => ({
  uid: "5fc530101267",
  sequence: 0,
  status: "confirmed",
  changedAt: at("2027-04-26T14:00Z"),
  startsAt: at("2027-05-03T13:00Z"),
  endsAt: at("2027-05-03T14:00Z"),
  summary: "Bench time",
  description: "Post the unit by Monday.",
  location: "12 Harbour Lane",
  url: "https://shop.example/job/1",
  ...different,
});

describe("a content line (RFC 5545 §3.1)", () => {
  it.each([
    ["x".repeat(75), [75]],
    ["x".repeat(76), [75, 2]],
    ["x".repeat(149), [75, 75]],
    ["x".repeat(150), [75, 75, 2]],
    [`${"é".repeat(37)}a`, [75]],
    ["é".repeat(38), [74, 3]],
    [`SUMMARY:${"\u{1F6A4}".repeat(20)}`, [72, 17]],
    ["", [0]],
  ])("%s is folded into pieces of so many octets", (line, expected) => {
    const folded = foldLine(line);
    expect(folded.endsWith("\r\n")).toBe(true);
    expect(folded.slice(0, -2).split("\r\n").map(octets)).toEqual(expected);
  });

  it("is the same again when it is unfolded, whatever it says, and no piece is too long or breaks a character", () => {
    fc.assert(
      fc.property(
        fc.string({ unit: "grapheme", maxLength: 300 }).filter((text) => !hasControl(text)),
        (line) => {
          const folded = foldLine(line);
          expect(folded.slice(0, -2).replaceAll("\r\n ", "")).toBe(line);
          for (const piece of folded.slice(0, -2).split("\r\n")) {
            expect(octets(piece)).toBeLessThanOrEqual(75);
            expect(() => encodeURIComponent(piece)).not.toThrow();
          }
        },
      ),
    );
  });

  it("never becomes two lines, whatever is put into it", () => {
    expect(foldLine("URL:https://a.example\r\nATTENDEE:x\u0000\u007f")).toBe("URL:https://a.exampleATTENDEE:x\r\n");
  });
});

describe("text in a value (RFC 5545 §3.3.11)", () => {
  it("escapes what must be and leaves colons and quotes", () => {
    expect(escapeText('Bring part, tag; label\nC:\\x "q" : ok')).toBe('Bring part\\, tag\\; label\\nC:\\\\x "q" : ok');
  });

  it("writes each kind of line break as one", () => {
    expect(escapeText("a\r\nb\rc\nd")).toBe("a\\nb\\nc\\nd");
  });
});

it("writes an instant in UTC without fractions", () => {
  expect(utcStamp(at("2027-03-14T13:00:00.999Z"))).toBe("20270314T130000Z");
});

/** RFC 5545 §3.6.1, 3.7.3 and 3.7.4, RFC 5546 §3.2: what the parser below lets pass unseen. */
describe("a slot's calendar object", () => {
  const names = (text: string) => unfolded(text).map((line) => line.slice(0, line.indexOf(":")));

  it("has each property that must be there exactly once, and none that must not", () => {
    const properties = names(slotIcs(anEvent()));
    expect(properties).toEqual([
      "BEGIN",
      "VERSION",
      "PRODID",
      "BEGIN",
      "UID",
      "DTSTAMP",
      "DTSTART",
      "DTEND",
      "SEQUENCE",
      "STATUS",
      "SUMMARY",
      "DESCRIPTION",
      "LOCATION",
      "URL",
      "END",
      "END",
    ]);
  });

  it("ends every line with CRLF, keeps to 75 octets and has no bare line break", () => {
    const text = slotIcs(anEvent({ description: "Grüße, ".repeat(60), summary: "a\nb" }));
    expect(text.endsWith("END:VCALENDAR\r\n")).toBe(true);
    expect(text.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
    for (const line of text.split("\r\n")) expect(octets(line)).toBeLessThanOrEqual(75);
  });

  it("tells a cancelled slot by its status and a higher sequence under the same uid", () => {
    const lines = unfolded(slotIcs(anEvent({ status: "cancelled", sequence: 2 })));
    expect(lines).toContain("STATUS:CANCELLED");
    expect(lines).toContain("SEQUENCE:2");
    expect(lines).toContain("DTSTAMP:20270426T140000Z");
    expect(lines).toContain("UID:5fc530101267");
  });

  it("gives every text back to a general-purpose parser, and the times to the second", () => {
    const signs = fc.constantFrom("\\", ";", ",", ":", '"', "n", "N", "\n", "\t", " ");
    const letters = fc.string({ unit: "grapheme", minLength: 1, maxLength: 1 });
    const texts = fc
      .array(fc.oneof(signs, letters), { maxLength: 150 })
      .map((parts) => parts.join(""))
      .filter((text) => !hasControl(text.replace(/[\n\t]/g, "")));
    fc.assert(
      fc.property(
        texts,
        texts,
        texts,
        fc.integer({ min: 0, max: 5_000_000 }),
        (summary, description, location, quarter) => {
          const startsAt = quarter * 900_000;
          const text = slotIcs(anEvent({ summary, description, location, startsAt, endsAt: startsAt + 3_600_000 }));
          const event = new ICAL.Event(new ICAL.Component(ICAL.parse(text)).getFirstSubcomponent("vevent")!);
          expect([event.summary, event.description, event.location]).toEqual([summary, description, location]);
          expect(event.startDate.toJSDate().getTime()).toBe(startsAt);
          expect(event.endDate.toJSDate().getTime()).toBe(startsAt + 3_600_000);
          expect(event.startDate.zone.tzid).toBe("UTC");
          expect(event.uid).toBe("5fc530101267");
        },
      ),
    );
  });

  it("gives back lines, commas, semicolons and backslashes of a text as they were", () => {
    const description = 'Post by: Monday; tag, label\nC:\\n \\, \\; "q"\n';
    const event = new ICAL.Event(
      new ICAL.Component(ICAL.parse(slotIcs(anEvent({ description })))).getFirstSubcomponent("vevent")!,
    );
    expect(event.description).toBe(description);
  });
});

const unfolded = (text: string) => text.replaceAll("\r\n ", "").split("\r\n").slice(0, -1);
const hasControl = (text: string) => [...text].some((character) => character < " " || character === "\u007f");
