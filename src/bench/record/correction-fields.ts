import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import type { ServiceCorrection } from "#shared/job/record-correction.ts";
import type { MeasuredSlip, Service } from "#shared/job/record-schema.ts";
import { SHOP_RECORD } from "#shared/messages/shop-record-words.ts";
import { partsThatFit } from "#shared/shop/parts.ts";

/** The correction form as it is filled in: text by field. */
export type CorrectionFields = Readonly<Record<string, string>>;
/** What is wrong, by field. */
export type CorrectionProblems = Readonly<Record<string, string>>;
export type ReadCorrection = { readonly why: string; readonly change: ServiceCorrection };

/** The form as it stands before anybody has changed it. */
export function correctionFields(service: Service): CorrectionFields {
  return {
    engineHours: service.engineHours === null ? "" : String(service.engineHours),
    serial: service.unit.serial ?? "",
    found: service.found.slip?.readings.join(" ") ?? "",
    left: service.left.slip?.readings.join(" ") ?? "",
    ...Object.fromEntries(correctableParts(service).map(({ part, count }) => [partField(part), String(count)])),
    note: service.note ?? "",
    why: "",
  };
}

export const partField = (part: string): string => `part.${part}`;

/** What went in, and whatever else fits such a unit. */
export function correctableParts({ parts, unit }: Service): Service["parts"] {
  const others = partsThatFit(unit.family).filter(({ part }) => !parts.some((used) => used.part === part));
  return [...parts, ...others.map(({ part, name }) => ({ part, name, count: 0 }))];
}

/** Reads the form, or says of each field what would be accepted. */
export function readCorrection(
  fields: CorrectionFields,
  service: Service,
): Outcome<ReadCorrection, CorrectionProblems> {
  const said = (name: string) => (fields[name] ?? "").trim();
  const [note, why] = [said("note"), said("why")];
  const engineHours = said("engineHours") === "" ? null : numberIn(said("engineHours"));
  const found = readingsIn(said("found"), service.found.slip);
  const left = readingsIn(said("left"), service.left.slip);
  const parts = correctableParts(service).map((part) => ({ ...part, count: countIn(said(partField(part.part))) }));
  const problems: CorrectionProblems = {
    ...(engineHours !== null && !(engineHours >= 0 && engineHours <= MOST_HOURS) && { engineHours: WORDS.badHours }),
    ...(!found.ok && { found: found.refusal }),
    ...(!left.ok && { left: left.refusal }),
    ...Object.fromEntries(
      parts.filter(({ count }) => Number.isNaN(count)).map(({ part }) => [partField(part), WORDS.badCount]),
    ),
    ...(said("serial").length > LONGEST_SERIAL && { serial: WORDS.badText(LONGEST_SERIAL) }),
    ...(note.length > LONGEST_NOTE && { note: WORDS.badText(LONGEST_NOTE) }),
    ...(why === "" && { why: WORDS.noReason }),
    ...(why.length > LONGEST_NOTE && { why: WORDS.badText(LONGEST_NOTE) }),
  };
  if (!found.ok || !left.ok || Object.keys(problems).length > 0) return refuse(problems);
  const readings = { foundReadings: found.value, leftReadings: left.value };
  return accept({ why, change: { serial: said("serial"), engineHours, ...readings, parts, note: note || null } });
}

const WORDS = SHOP_RECORD;
const MOST_HOURS = 20_000;
const MOST_READINGS = 50;
const MOST_TORQUE = 200;
const LONGEST_SERIAL = 40;
const LONGEST_NOTE = 500;

/** A decimal point or comma; anything else that is not a number is NaN. */
const numberIn = (text: string): number => (/^\d+([.,]\d+)?$/.test(text) ? Number(text.replace(",", ".")) : Number.NaN);

const countIn = (text: string): number => (text === "" ? 0 : /^\d{1,2}$/.test(text) ? Number(text) : Number.NaN);

/** Gaps, semicolons or lines lie between readings. A slip that was never read stays unread, whatever is typed. */
function readingsIn(text: string, slip: MeasuredSlip | null): Outcome<readonly number[], string> {
  if (slip === null) return accept([]);
  const readings = text
    .split(/[\s;]+/)
    .filter((it) => it !== "")
    .map(numberIn);
  if (readings.length === 0) return refuse(WORDS.noReadings);
  const isGood = readings.length <= MOST_READINGS && readings.every((it) => it > 0 && it <= MOST_TORQUE);
  return isGood ? accept(readings) : refuse(WORDS.badReadings);
}
