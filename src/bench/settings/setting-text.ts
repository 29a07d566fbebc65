import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import type { CalendarSettings, Opening } from "#shared/calendar/calendar-settings.ts";
import { UNREADABLE } from "#shared/messages/shop-settings-words.ts";

/** A value read from what was typed, or what would be accepted. Whether it makes sense is for the schema to say. */
export type ReadSetting<Value> = Outcome<Value, string>;

export const readText = (text: string): ReadSetting<string> => accept(text.trim());

/** @example readLines("one\n\n two ") // ["one", "two"] */
export const linesOf = (text: string): readonly string[] =>
  text
    .split(/\r?\n/)
    .map((line) => line.trim())
    .filter((line) => line !== "");

/** A decimal point only: a comma would be a thousands mark to some. */
export function readNumber(text: string): ReadSetting<number> {
  const trimmed = text.trim();
  return /^\d{1,9}(\.\d{1,9})?$/.test(trimmed) ? accept(Number(trimmed)) : refuse(UNREADABLE.number);
}

/** Empty = not known. */
export function readNumberOrNone(text: string): ReadSetting<number | null> {
  if (text.trim() === "") return accept(null);
  const read = readNumber(text);
  return read.ok ? read : refuse(UNREADABLE.numberOrNone);
}

/** @example openingsText([{ opens: "08:00", closes: "12:00" }, { opens: "13:00", closes: "17:00" }]) // "08:00-12:00, 13:00-17:00" */
export const openingsText = (openings: readonly Opening[]): string =>
  openings.map(({ opens, closes }) => `${opens}-${closes}`).join(", ");

/** Empty = closed. An hour may be written with one digit. */
export function readOpenings(text: string): ReadSetting<readonly Opening[]> {
  const parts = text.trim() === "" ? [] : text.split(",");
  const read = parts.map((part) => /^\s*(\d{1,2}:\d\d)\s*[-–]\s*(\d{1,2}:\d\d)\s*$/.exec(part));
  const openings = read.flatMap((found) => {
    const [, opens = "", closes = ""] = found ?? [];
    return found === null ? [] : [{ opens: opens.padStart(5, "0"), closes: closes.padStart(5, "0") }];
  });
  return openings.length === parts.length ? accept(openings) : refuse(UNREADABLE.openings);
}

type Closures = CalendarSettings["closures"];

/** @example closuresText([{ from: "2027-07-04", to: "2027-07-05", why: "Holiday" }]) // "2027-07-04..2027-07-05 Holiday" */
export const closuresText = (closures: Closures): string =>
  closures.map(({ from, to, why }) => `${from === to ? from : `${from}..${to}`} ${why}`.trimEnd()).join("\n");

/** One a line; a single day needs no second date. */
export function readClosures(text: string): ReadSetting<Closures> {
  const lines = linesOf(text);
  const closures = lines.flatMap((line) => {
    const [, from, to = from, why = ""] =
      /^(\d{4}-\d\d-\d\d)(?:\s*\.\.\s*(\d{4}-\d\d-\d\d))?(?:\s+(.*))?$/.exec(line) ?? [];
    return from === undefined || to === undefined ? [] : [{ from, to, why }];
  });
  return closures.length === lines.length ? accept(closures) : refuse(UNREADABLE.closures);
}

type Benches = CalendarSettings["benches"];

/** @example benchesText([{ id: "b1", name: "Bench 1" }]) // "b1 Bench 1" */
export const benchesText = (benches: Benches): string => benches.map(({ id, name }) => `${id} ${name}`).join("\n");

export function readBenches(text: string): ReadSetting<Benches> {
  const lines = linesOf(text);
  const benches = lines.flatMap((line) => {
    const [, id, name] = /^(\S+)\s+(.+)$/.exec(line) ?? [];
    return id === undefined || name === undefined ? [] : [{ id, name }];
  });
  return benches.length === lines.length ? accept(benches) : refuse(UNREADABLE.benches);
}
