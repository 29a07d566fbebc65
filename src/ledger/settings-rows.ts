import { DEMO_SHOP, type SettingsVersion, type ShopSettings, ShopSettingsSchema } from "#shared/shop/shop-settings.ts";
import { firstRow, numberIn, textIn } from "#src/ledger/row.ts";

/** Reads the newest settings. A version is never edited, so one that was parsed once is not parsed again. */
export type ReadSettings = () => SettingsVersion;

export function settingsReader(sql: SqlStorage): ReadSettings {
  let known: SettingsVersion | null = null;
  return () => {
    const newest = firstRow(sql, "SELECT max(version) AS version FROM settings");
    if (newest === undefined || newest["version"] === null) throw new Error("A ledger without settings");
    const version = numberIn(newest, "version");
    const settings = known?.version === version ? known : settingsOf(sql, version);
    known = settings;
    return settings;
  };
}

/** A new shop starts from the demo shop's settings until it saves its own. */
export function beginSettings(sql: SqlStorage, now: number): void {
  if (firstRow(sql, "SELECT version FROM settings LIMIT 1") === undefined) keepSettings(sql, 1, now, DEMO_SHOP);
}

export function keepSettings(sql: SqlStorage, version: number, savedAt: number, settings: ShopSettings): void {
  const text = JSON.stringify(settings);
  sql.exec("INSERT INTO settings (version, saved_at, settings) VALUES (?, ?, ?)", version, savedAt, text);
}

/** A saved state of the settings, by its version. */
export function settingsOf(sql: SqlStorage, version: number): SettingsVersion {
  const row = firstRow(sql, "SELECT saved_at, settings FROM settings WHERE version = ?", version);
  if (row === undefined) throw new Error(`No settings of version ${version}`);
  return {
    version,
    savedAt: numberIn(row, "saved_at"),
    settings: ShopSettingsSchema.parse(JSON.parse(textIn(row, "settings"))),
  };
}
