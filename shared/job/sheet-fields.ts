import { INSPECTED_PARTS, type SettingTry, type SheetEntry, type SlipEntry } from "#shared/job/sheet-entry.ts";
import type { SheetStep } from "#shared/job/sheet-steps.ts";
import { TOOL_KINDS, type TorqueTool } from "#shared/slip/torque-tool.ts";

/** A posted form: each field's values, in order. No library here: the browser's script reads forms with this too. */
export type FormFields = Readonly<Record<string, readonly string[]>>;

/** The button that skips a step, and the field of its reason. */
export const SKIP = { button: "do", value: "skip", why: "skipWhy" } as const;

/** What a try's field says where its place was come to by backing off. */
export const BACKED_OFF = "backed-off";

/**
 * The entry that a step's form stands for. What is no number stays the text it was, for the schema to refuse by name.
 * @example readEntry("count", { needles: ["40"], why: [""] }) // { kind: "count", needles: 40, why: null }
 */
export function readEntry(kind: SheetStep["kind"], fields: FormFields): { readonly kind: SheetEntry["kind"] } {
  return fields[SKIP.button]?.[0] === SKIP.value ? skipped(fields) : { kind, ...READERS[kind](fields) };
}

const skipped = (fields: FormFields) => ({ kind: "skipped" as const, why: textIn(fields, SKIP.why) ?? "" });

const READERS: Readonly<Record<SheetStep["kind"], (fields: FormFields) => object>> = {
  slip: (fields) => ({
    readings: (fields["readings"] ?? []).filter(isFilled).map(number),
    breakaway: numberIn(fields, "breakaway"),
    tool: toolIn(fields),
    why: textIn(fields, "why"),
  }),
  inspect: (fields) => ({
    parts: Object.fromEntries(
      INSPECTED_PARTS.flatMap((part) => {
        const [condition, note] = [textIn(fields, `parts.${part}.condition`), textIn(fields, `parts.${part}.note`)];
        return condition === null && note === null ? [] : [[part, { condition, note }]];
      }),
    ),
    unitFamily: textIn(fields, "unitFamily"),
    boostPsi: numberIn(fields, "boostPsi"),
    serial: textIn(fields, "serial"),
  }),
  count: (fields) => ({ needles: numberIn(fields, "needles"), why: textIn(fields, "why") }),
  setting: (fields) => ({ tries: triesIn(fields), tool: toolIn(fields) }),
  done: (fields) => ({ note: textIn(fields, "note") }),
};

/** A row with anything in it is a try; an empty one is none. */
function triesIn(fields: FormFields): readonly TryTyped[] {
  const column = (name: string, place: number) => fields[`tries.${name}`]?.[place] ?? "";
  const rows = Math.max(...["nutDegrees", "shimMm", "slip"].map((name) => fields[`tries.${name}`]?.length ?? 0));
  return Array.from({ length: rows }, (_, place) => place)
    .filter((place) => ["nutDegrees", "shimMm", "slip"].some((name) => isFilled(column(name, place))))
    .map((place) => ({
      nutDegrees: numberOrNull(column("nutDegrees", place)),
      shimMm: numberOrNull(column("shimMm", place)),
      slip: numberOrNull(column("slip", place)),
      loosened: column("reached", place) === BACKED_OFF,
    }));
}

/** A number as typed; null where there is none. */
export function readNumber(fields: FormFields, name: string): number | null {
  const value = numberIn(fields, name);
  return typeof value === "number" ? value : null;
}

/** The readings so far, for live figures: what is kept goes through the schema. */
export const readReadings = (fields: FormFields): readonly number[] =>
  (fields["readings"] ?? []).map(numberOrNull).filter((it) => typeof it === "number" && it > 0) as number[];

/** The tries that are whole so far, for live figures: what is kept goes through the schema. */
export const readTries = (fields: FormFields): readonly SettingTry[] => triesIn(fields).filter(isWhole);

const isWhole = (it: TryTyped): it is SettingTry =>
  typeof it.slip === "number" && it.slip > 0 && typeof it.nutDegrees !== "string" && typeof it.shimMm !== "string";

type TryTyped = {
  readonly nutDegrees: number | string | null;
  readonly shimMm: number | string | null;
  readonly slip: number | string | null;
  readonly loosened: boolean;
};

type ToolTyped = {
  readonly kind: string | null;
  readonly accuracyPercent: number | string | null;
  readonly resolution: number | string | null;
  readonly k?: number | string;
};

function toolIn(fields: FormFields): ToolTyped {
  const k = numberIn(fields, "tool.k");
  return {
    kind: textIn(fields, "tool.kind"),
    accuracyPercent: numberIn(fields, "tool.accuracyPercent"),
    resolution: numberIn(fields, "tool.resolution"),
    ...(k !== null && { k }),
  };
}

/**
 * Fields that an entry cannot do without, or that hold no number where one is wanted: told at once, while the network
 * is away too. Whether a number is one that is accepted, the schema says.
 * @example lacksOf("count", { needles: ["forty"] }) // ["needles"]
 */
export function lacksOf(kind: SheetStep["kind"], fields: FormFields): readonly string[] {
  if (fields[SKIP.button]?.[0] === SKIP.value) return textIn(fields, SKIP.why) === null ? [SKIP.why] : [];
  const wanted = WANTED[kind].filter((name) => !(fields[name] ?? []).some(isFilled));
  const wrong = NUMBERS.filter((name) => (fields[name] ?? []).some((it) => typeof numberOrNull(it) === "string"));
  return [...new Set([...wanted, ...wrong])];
}

const TOOL_WANTED = ["tool.accuracyPercent", "tool.resolution"];
const WANTED: Readonly<Record<SheetStep["kind"], readonly string[]>> = {
  slip: ["readings", ...TOOL_WANTED],
  inspect: [],
  count: ["needles"],
  setting: ["tries.slip", ...TOOL_WANTED],
  done: [],
};
const NUMBERS = [
  ...["readings", "breakaway", "needles", "boostPsi", "tries.slip", "tries.nutDegrees", "tries.shimMm"],
  ...[...TOOL_WANTED, "tool.k"],
];

/** The wrench as far as it is described; null while it is not. For live figures only: what is kept goes through the schema. */
export function readTool(fields: FormFields): TorqueTool | null {
  const { kind, accuracyPercent, resolution, k } = toolIn(fields);
  const known = TOOL_KINDS.find((it) => it === kind);
  if (known === undefined || typeof accuracyPercent !== "number" || typeof resolution !== "number") return null;
  if (accuracyPercent <= 0 || resolution < 0) return null;
  return { kind: known, accuracyPercent, resolution, ...(typeof k === "number" && k >= 1 && { k }) };
}

const isFilled = (text: string): boolean => text.trim() !== "";
const textIn = (fields: FormFields, name: string): string | null => fields[name]?.[0]?.trim() || null;
const numberIn = (fields: FormFields, name: string) => numberOrNull(fields[name]?.[0] ?? "");
const numberOrNull = (text: string) => (isFilled(text) ? number(text) : null);

/** A decimal comma is as good as a point. */
function number(text: string): number | string {
  const plain = text.trim().replace(",", ".");
  return /^-?(?:\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : text;
}

/** The form that an entry came from. @example fieldsOf({ kind: "done", note: "Oiled" }) // { note: ["Oiled"] } */
export function fieldsOf(entry: SheetEntry): FormFields {
  switch (entry.kind) {
    case "slip":
      return {
        readings: entry.readings.map(String),
        breakaway: [shown(entry.breakaway)],
        ...toolFields(entry.tool),
        why: [entry.why ?? ""],
      };
    case "inspect":
      return {
        ...Object.fromEntries(
          Object.entries(entry.parts).flatMap(([part, { condition, note }]) => [
            [`parts.${part}.condition`, [condition]],
            [`parts.${part}.note`, [note ?? ""]],
          ]),
        ),
        unitFamily: [entry.unitFamily ?? ""],
        boostPsi: [shown(entry.boostPsi)],
        serial: [entry.serial ?? ""],
      };
    case "count":
      return { needles: [String(entry.needles)], why: [entry.why ?? ""] };
    case "setting":
      return { ...tryFields(entry.tries), ...toolFields(entry.tool) };
    case "done":
      return { note: [entry.note ?? ""] };
    case "skipped":
      return { [SKIP.button]: [SKIP.value], [SKIP.why]: [entry.why] };
  }
}

/** The wrench's part of a form. */
export const toolFields = ({ kind, accuracyPercent, resolution, k }: SlipEntry["tool"]): FormFields => ({
  "tool.kind": [kind],
  "tool.accuracyPercent": [String(accuracyPercent)],
  "tool.resolution": [String(resolution)],
  "tool.k": [k === undefined ? "" : String(k)],
});

const tryFields = (tries: readonly SettingTry[]): FormFields => ({
  "tries.nutDegrees": tries.map(({ nutDegrees }) => shown(nutDegrees)),
  "tries.shimMm": tries.map(({ shimMm }) => shown(shimMm)),
  "tries.slip": tries.map(({ slip }) => String(slip)),
  "tries.reached": tries.map(({ loosened }) => (loosened ? BACKED_OFF : "")),
});

const shown = (value: number | null): string => (value === null ? "" : String(value));
