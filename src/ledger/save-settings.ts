import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import type { SettingsVersion, ShopSettings } from "#shared/shop/shop-settings.ts";
import { keepSettings } from "#src/ledger/settings-rows.ts";
import { noteBoardChange, type Turn } from "#src/ledger/turn.ts";

export type SettingsWish = { readonly ifVersion: number; readonly settings: ShopSettings };
export type SettingsRefusal = { readonly reason: "changed-meanwhile"; readonly version: number };

/** Saves a new version, unless somebody else saved one since the asker looked. */
export function saveSettings(turn: Turn, wish: SettingsWish): Outcome<SettingsVersion, SettingsRefusal> {
  const { version } = turn.settings();
  if (wish.ifVersion !== version) return refuse({ reason: "changed-meanwhile", version });
  keepSettings(turn.sql, version + 1, turn.now, wish.settings);
  noteBoardChange(turn);
  return accept(turn.settings());
}
