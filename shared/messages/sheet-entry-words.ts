import { unreachable } from "#shared/basics/unreachable.ts";
import type { InspectEntry, SettingEntry, SheetEntry, SlipEntry } from "#shared/job/sheet-entry.ts";
import { CONDITION_WORDS, PART_WORDS, TOOL_WORDS } from "#shared/messages/sheet-words.ts";
import { roundTo } from "#shared/units/round-to.ts";

/**
 * What was written at a step, in one line.
 * @example entryText({ kind: "count", needles: 40, why: null }) // "40"
 */
export function entryText(entry: SheetEntry): string {
  switch (entry.kind) {
    case "slip":
      return slipText(entry);
    case "inspect":
      return inspectText(entry);
    case "count":
      return withNote(`${entry.needles}`, entry.why);
    case "setting":
      return settingText(entry);
    case "done":
      return withNote("Done", entry.note);
    case "skipped":
      return `Skipped: ${entry.why}`;
    default:
      return unreachable(entry);
  }
}

function slipText({ readings, breakaway, tool, why }: SlipEntry): string {
  const mean = readings.reduce((sum, one) => sum + one, 0) / Math.max(1, readings.length);
  const said = [
    readings.length > 1 ? `Mean ${roundTo(mean, 2)} lbf·ft of ${readings.join(", ")}` : `${readings[0] ?? "–"} lbf·ft`,
    ...(breakaway === null ? [] : [`breakaway ${breakaway}`]),
    `${TOOL_WORDS[tool.kind].toLowerCase()} wrench`,
  ];
  return withNote(said.join("; "), why);
}

function inspectText({ parts, unitFamily, boostPsi }: InspectEntry): string {
  const judged = Object.entries(parts) as [keyof typeof PART_WORDS, NonNullable<InspectEntry["parts"]["shaft"]>][];
  const bad = judged.filter(([, { condition }]) => condition !== "good");
  const noted = judged.filter(([, { condition, note }]) => condition === "good" && note !== null);
  const said = [
    ...bad.map(
      ([part, it]) => `${PART_WORDS[part]}: ${withNote(CONDITION_WORDS[it.condition].toLowerCase(), it.note)}`,
    ),
    ...noted.map(([part, it]) => `${PART_WORDS[part]}: ${withNote("good", it.note)}`),
    ...(judged.length > bad.length + noted.length ? [`${judged.length - bad.length - noted.length} good`] : []),
    ...(unitFamily === null ? [] : [`built as a ${unitFamily} unit`]),
    ...(boostPsi === null ? [] : [`peak boost ${boostPsi} psi`]),
  ];
  return said.length === 0 ? "No part judged" : said.join("; ");
}

function settingText({ tries }: SettingEntry): string {
  return tries
    .map(({ nutDegrees, shimMm, slip }) => {
      const at = nutDegrees !== null ? ` at ${nutDegrees}°` : shimMm !== null ? ` with ${shimMm} mm` : "";
      return `${slip} lbf·ft${at}`;
    })
    .join(", then ");
}

const withNote = (said: string, note: string | null): string => (note === null ? said : `${said} (${note})`);
