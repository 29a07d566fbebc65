import type { Child } from "hono/jsx";
import type { MeasuredSlip, Service } from "#shared/job/record-schema.ts";
import { DECISION_WORDS, percentText, RECORD } from "#shared/messages/record-words.ts";
import { TOOL_WORDS } from "#shared/messages/sheet-words.ts";
import { roundTo } from "#shared/units/round-to.ts";

type Told = (slip: MeasuredSlip) => Child;

/** The slip in numbers, as found and as left side by side; torques in lbf·ft. */
export function MeasuredTable({ found, left }: Pick<Service, "found" | "left">) {
  return (
    <section>
      <h2>{RECORD.readings}</h2>
      <section class="scroll" tabindex={0} aria-label={RECORD.readings}>
        <table>
          <thead>
            <tr>
              <td></td>
              <th scope="col">{RECORD.asFound}</th>
              <th scope="col">{RECORD.asLeft}</th>
            </tr>
          </thead>
          <tbody>
            <tr>
              <th scope="row">{RECORD.target}</th>
              <td>{RECORD.nothing}</td>
              <td>{aimText(left)}</td>
            </tr>
            {ROWS.map(([label, told]) => (
              <tr>
                <th scope="row">{label}</th>
                <td>{found.slip === null ? RECORD.nothing : told(found.slip)}</td>
                <td>{left.slip === null ? RECORD.nothing : told(left.slip)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </section>
  );
}

const ROWS: readonly (readonly [label: string, told: Told])[] = [
  [RECORD.eachReading, ({ readings }) => readings.join(", ")],
  [RECORD.breakaway, ({ breakaway }) => breakaway ?? RECORD.nothing],
  [RECORD.tool, ({ tool }) => toolText(tool)],
  [RECORD.mean, ({ mean }) => `${shown(mean)} lbf·ft`],
  [
    RECORD.interval,
    ({ uncertainty }) =>
      uncertainty === null ? RECORD.nothing : `± ${shown(uncertainty.expanded)} (${percentText(uncertainty.coverage)})`,
  ],
  [
    RECORD.dof,
    ({ uncertainty }) =>
      uncertainty === null ? RECORD.nothing : uncertainty.dof === null ? RECORD.infinite : roundTo(uncertainty.dof, 1),
  ],
  [RECORD.inBand, ({ decision }) => (decision === null ? RECORD.nothing : percentText(decision.probabilityInBand))],
  [RECORD.decision, ({ decision }) => (decision === null ? RECORD.nothing : DECISION_WORDS[decision.is])],
];

const aimText = ({ target, band }: Service["left"]): string =>
  target === null || band === null ? RECORD.nothing : `${target} (${band.low} to ${band.high})`;

const toolText = ({ kind, accuracyPercent, resolution, k }: MeasuredSlip["tool"]): string =>
  `${TOOL_WORDS[kind]}, ± ${accuracyPercent} %${k === undefined ? "" : ` (k = ${k})`}, steps of ${resolution}`;

const shown = (lbfFt: number): string => roundTo(lbfFt, 3).toString();
