import type { MeasuredSlip, Service } from "#shared/job/record-schema.ts";
import { isSet } from "#shared/job/service-record.ts";
import { betweenText, percentText, slipText, WORK_DONE } from "#shared/messages/record-words.ts";
import { CONDITION_WORDS, PART_WORDS } from "#shared/messages/sheet-words.ts";
import { dateText } from "#shared/messages/time-words.ts";
import { DEBRIS_WORDS } from "#shared/messages/verdict-words.ts";

/** A service in plain sentences: what was found, done and left, and when it is due again. */
export type PlainService = Readonly<Record<"found" | "done" | "left" | "next", readonly string[]>>;

export function plainService(service: Service, locale: string): PlainService {
  return {
    found: [foundText(service), ...partsTexts(service.found.parts), ...engineTexts(service)],
    done: [
      WORK_DONE[service.work][isSet(service.left.slip) ? "slipSet" : "slipNotSet"],
      ...(service.note === null ? [] : [service.note]),
    ],
    left: leftTexts(service),
    next: nextTexts(service, locale),
  };
}

function foundText({ found, steps }: Service): string {
  if (found.slip === null) return skippedText("The slip was not measured as it came in", steps, "as-found-slip");
  return `The slip was ${slipText(found.slip.mean)} as it came in${sureText(found.slip)}.`;
}

/** What a click wrench says is no slip, so it is given no interval. */
function sureText({ uncertainty, mean, tool, readings }: MeasuredSlip): string {
  if (tool.kind === "click") return ", by a click wrench: a rough figure";
  if (uncertainty === null) return readings.length === 1 ? ", read once" : `, read ${readings.length} times`;
  return `: ${betweenText(mean, uncertainty.expanded, uncertainty.coverage)}`;
}

function partsTexts(parts: Service["found"]["parts"]): readonly string[] {
  if (parts.length === 0) return [];
  const bad = (["broken", "worn"] as const).flatMap((condition) => {
    const names = parts.filter((it) => it.condition === condition).map(({ part }) => PART_WORDS[part].toLowerCase());
    return names.length === 0 ? [] : [`${CONDITION_WORDS[condition]}: ${names.join(", ")}.`];
  });
  if (bad.length === 0) return ["Every part that we looked at was good."];
  return parts.some(({ condition }) => condition === "good") ? [...bad, "The other parts were good."] : bad;
}

/** Parts in the engine are told of where they may be; what to do then is listed by itself. */
const engineTexts = ({ found }: Service): readonly string[] =>
  found.findings === null || found.findings.engineDebris === "unlikely"
    ? []
    : [DEBRIS_WORDS[found.findings.engineDebris]];

function leftTexts({ left, steps }: Service): readonly string[] {
  if (left.slip === null) return [skippedText("The slip was not measured at the end", steps, "final-slip")];
  const said = `We left it at ${slipText(left.slip.mean)}${sureText(left.slip)}.`;
  const { decision, note } = left.slip;
  if (decision === null || left.band === null) return [said, ...benchSays(note)];
  const inBand = `It lies between ${left.band.low} and ${left.band.high} lbf·ft with a chance of ${percentText(decision.probabilityInBand)}`;
  switch (decision.is) {
    case "accept":
      return [said, `${inBand}: accepted.`];
    case "not-proved":
      return [said, `${inBand}: not proved.`, ...benchSays(note)];
    case "reject":
      return [said, `${inBand}: not accepted.`, ...benchSays(note)];
  }
}

const benchSays = (note: string | null): readonly string[] => (note === null ? [] : [`The bench says: ${note}`]);

function skippedText(says: string, steps: Service["steps"], id: Service["steps"][number]["step"]): string {
  const why = steps.find(({ step }) => step === id)?.note ?? null;
  return why === null ? `${says}.` : `${says}: ${why}`;
}

function nextTexts({ next }: Service, locale: string): readonly string[] {
  const slip =
    next.slipCheckAtHours === null
      ? `Have the slip checked after another ${next.slipInterval} engine hours.`
      : `Have the slip checked at ${next.slipCheckAtHours} engine hours.`;
  const clocks = [
    ...(next.rebuildAtHours === null ? [] : [`at ${next.rebuildAtHours} engine hours`]),
    ...(next.rebuildBy === null ? [] : [`by ${dateText(next.rebuildBy, locale)}`]),
  ];
  const rebuild = `Have it rebuilt ${clocks.join(" or ")}${clocks.length > 1 ? ", whichever comes first" : ""}.`;
  return clocks.length === 0 ? [slip] : [slip, rebuild];
}
