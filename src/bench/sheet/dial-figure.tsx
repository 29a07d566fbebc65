import { jsx } from "hono/jsx";
import type { SheetPlan } from "#shared/job/sheet-plan.ts";
import { type SlipShown, slipShown } from "#shared/job/slip-shown.ts";
import { dialLabel, dialLines } from "#shared/messages/sheet-dial-words.ts";
import { DIAL_BOX, type DialFacts, dialShapes } from "#shared/slip/slip-dial.ts";
import type { TorqueTool } from "#shared/slip/torque-tool.ts";

type DialProps = {
  readonly plan: Pick<SheetPlan, "aim" | "levels">;
  readonly readings: readonly number[];
  readonly tool: TorqueTool | null;
  /** The slip is to be proved, not only read. */
  readonly isFinal: boolean;
};

/** Band, readings, mean and uncertainty on one scale, and the same in words. */
export function DialFigure({ plan, readings, tool, isFinal }: DialProps) {
  const shown: SlipShown = slipShown(plan, { readings, tool });
  return (
    <figure class="dial" data-dial data-final={isFinal ? "yes" : undefined} data-decision={shown.decision ?? "none"}>
      <Dial facts={shown.dial} />
      <figcaption aria-live="polite">
        {dialLines(shown, { readings: readings.length, hasTool: tool !== null, isFinal }).map((line) => (
          <p>{line}</p>
        ))}
      </figcaption>
    </figure>
  );
}

/** The dial by itself. */
export const Dial = ({ facts }: { readonly facts: DialFacts }) => (
  <svg viewBox={DIAL_BOX} role="img" aria-label={dialLabel(facts)}>
    {dialShapes(facts).map(({ tag, part, attributes, text }) =>
      jsx(tag, { class: `dial-${part}`, ...attributes }, text ?? ""),
    )}
  </svg>
);
