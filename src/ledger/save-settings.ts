import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import type { SettingsVersion, ShopSettings } from "#shared/shop/shop-settings.ts";
import { keepSettings } from "#src/ledger/settings-rows.ts";
import { noteStaffEvent } from "#src/ledger/staff-event-rows.ts";
import { noteBoardChange, type Turn } from "#src/ledger/turn.ts";

/** `staff` = who saves them, by name. */
export type SettingsWish = { readonly ifVersion: number; readonly settings: ShopSettings; readonly staff: string };
export type SettingsRefusal = { readonly reason: "changed-meanwhile"; readonly version: number };

/** Saves a new version, unless somebody else saved one since the asker looked. */
export function saveSettings(turn: Turn, wish: SettingsWish): Outcome<SettingsVersion, SettingsRefusal> {
  const { version } = turn.settings();
  if (wish.ifVersion !== version) return refuse({ reason: "changed-meanwhile", version });
  keepSettings(turn.sql, version + 1, turn.now, wish.settings);
  noteStaffEvent(turn.sql, { at: turn.now, staff: wish.staff, what: "settings-saved", about: String(version + 1) });
  noteBoardChange(turn);
  return accept(turn.settings());
}
