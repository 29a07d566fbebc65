import { type Source, sourceText } from "#shared/basics/source.ts";
import type { SettingGroup } from "#shared/messages/shop-settings-words.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { CLUTCH_SETTING_NOTES } from "#shared/slip/clutch-settings.ts";
import { numberField, type SettingField } from "#src/bench/settings/setting-field.ts";

type Numbers<Key extends string> = Readonly<Record<Key, number>>;
type Notes<Key extends string> = Readonly<Record<Key, { readonly text: string; readonly source: Source }>>;

/** What the shop measured on its own units, each number with its words and source. */
export const CLUTCH_FIELDS: readonly SettingField[] = [
  ...fieldsOf("clutchSetNut", "clutch.setNut", CLUTCH_SETTING_NOTES.setNut, ({ clutch }) => clutch.setNut),
  ...fieldsOf("clutchShimStack", "clutch.shimStack", CLUTCH_SETTING_NOTES.shimStack, ({ clutch }) => clutch.shimStack),
];

function fieldsOf<Key extends string>(
  group: SettingGroup,
  path: string,
  notes: Notes<Key>,
  numbers: (settings: ShopSettings) => Numbers<Key>,
): readonly SettingField[] {
  return (Object.keys(notes) as Key[]).map((key) =>
    numberField({
      group,
      name: `${path}.${key}`,
      label: notes[key].text,
      source: sourceText(notes[key].source),
      of: (settings) => numbers(settings)[key],
    }),
  );
}
