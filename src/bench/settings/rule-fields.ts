import { sourceText } from "#shared/basics/source.ts";
import { SLIP_SETTING_NOTES, type SlipSettings } from "#shared/slip/slip-settings.ts";
import { TRIAGE_SETTING_NOTES, type TriageSettings } from "#shared/triage/triage-settings.ts";
import { numberField, type SettingField } from "#src/bench/settings/setting-field.ts";

/** The numbers that the rules read, each with its own words and source. */
export const RULE_FIELDS: readonly SettingField[] = [
  ...keysOf(TRIAGE_SETTING_NOTES).map((key: keyof TriageSettings) =>
    numberField({
      group: "triage",
      name: `triage.${key}`,
      label: TRIAGE_SETTING_NOTES[key].text,
      source: sourceText(TRIAGE_SETTING_NOTES[key].source),
      of: ({ triage }) => triage[key],
    }),
  ),
  ...keysOf(SLIP_SETTING_NOTES).map((key: keyof SlipSettings) =>
    numberField({
      group: "slip",
      name: `slip.${key}`,
      label: SLIP_SETTING_NOTES[key].text,
      source: sourceText(SLIP_SETTING_NOTES[key].source),
      of: ({ slip }) => slip[key],
    }),
  ),
];

function keysOf<Key extends string>(record: Readonly<Record<Key, unknown>>): readonly Key[] {
  return Object.keys(record) as Key[];
}
