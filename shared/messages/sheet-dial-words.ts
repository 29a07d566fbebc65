import type { SlipShown } from "#shared/job/slip-shown.ts";
import { SHEET } from "#shared/messages/sheet-page-words.ts";
import { provableHundredths } from "#shared/slip/provable-means.ts";
import type { DialFacts } from "#shared/slip/slip-dial.ts";
import { FEWEST_READINGS } from "#shared/slip/torque-tool.ts";
import { roundTo } from "#shared/units/round-to.ts";

/** What stands under the dial, a line each. */
export function dialLines(
  { reading, decision, dial, provable }: SlipShown,
  { readings, hasTool, isFinal }: { readonly readings: number; readonly hasTool: boolean; readonly isFinal: boolean },
): readonly string[] {
  const proof = isFinal && hasTool && dial.band !== null ? [sayProvable(provable)] : [];
  if (reading === null) {
    return [
      ...proof,
      ...(readings < FEWEST_READINGS ? [SHEET.fewer(FEWEST_READINGS - readings)] : []),
      ...(hasTool ? [] : [SHEET.sayTool]),
      ...(dial.band === null ? [SHEET.noAim] : []),
    ];
  }
  const measured = `${SHEET.mean} ${SHEET.meanText(shown(reading.mean), shown(reading.expanded))}.`;
  if (decision === null) return [measured, SHEET.noAim];
  if (!isFinal) return [SHEET.asFound[decision], measured];
  return [SHEET.decision[decision], measured, reading.why, ...(decision === "accept" ? [] : proof)];
}

function sayProvable(means: SlipShown["provable"]): string {
  if (means === null) return SHEET.proves;
  const { low, high } = provableHundredths(means);
  return SHEET.provable(low.toFixed(2), high.toFixed(2));
}

/** The dial for those who do not see it. @example dialLabel(facts) // "Dial: band 17.5 to 18.1, target 18, readings 17.8" */
export function dialLabel({ band, target, readings, result }: DialFacts): string {
  const said = [
    ...(band === null ? [] : [`band ${band.low} to ${band.high}`]),
    ...(target === null ? [] : [`target ${target}`]),
    readings.length === 0 ? "no readings yet" : `readings ${readings.join(", ")}`,
    ...(result === null ? [] : [`mean ${shown(result.mean)} ± ${shown(result.expanded)}`]),
  ];
  return `${SHEET.dial}, lbf·ft: ${said.join("; ")}`;
}

const shown = (lbfFt: number): string => roundTo(lbfFt, 2).toFixed(2);
