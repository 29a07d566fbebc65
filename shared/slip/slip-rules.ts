import { type Source, sourceText } from "#shared/basics/source.ts";
import { CHARGER_RULES } from "#shared/slip/charger-rules.ts";
import { NOTE_RULES } from "#shared/slip/note-rules.ts";
import type { SlipRuleId } from "#shared/slip/slip-plan.ts";
import { STANDARD_RULES } from "#shared/slip/standard-rules.ts";

/** A slip rule as it is shown to the shop. */
export type SlipRuleShown = { readonly id: SlipRuleId; readonly text: string; readonly source: string };

/** Every rule a plan's `basis` can name, with its sentence and where it comes from. */
export const SLIP_RULES: readonly SlipRuleShown[] = [...STANDARD_RULES, ...CHARGER_RULES, ...NOTE_RULES].map(shown);

function shown({ id, text, source }: { id: SlipRuleId; text: string; source: Source }): SlipRuleShown {
  return { id, text, source: sourceText(source) };
}
