import type { SettingGroup, SettingWords } from "#shared/messages/shop-settings-words.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { type ReadSetting, readNumber } from "#src/bench/settings/setting-text.ts";

/** One entry of the settings form: where it stands in the settings, and how it is written and read. */
export type SettingField = SettingWords & {
  /** The path in {@link ShopSettings}, dotted; also the name of the form's field. */
  readonly name: string;
  readonly group: SettingGroup;
  /** Where the default comes from. */
  readonly source?: string;
  /** Several lines of text. */
  readonly manyLines?: true;
  readonly write: (settings: ShopSettings) => string;
  /** @param currency the currency typed in the same form */
  readonly read: (text: string, currency: string) => ReadSetting<unknown>;
};

type NumberField = Omit<SettingField, "read" | "write"> & { readonly of: (settings: ShopSettings) => number };

export const numberField = ({ of, ...field }: NumberField): SettingField => ({
  ...field,
  write: (settings) => String(of(settings)),
  read: readNumber,
});
