import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { type ShopSettings, ShopSettingsSchema } from "#shared/shop/shop-settings.ts";
import { BENCH_FIELDS } from "#src/bench/settings/bench-fields.ts";
import { CALENDAR_FIELDS } from "#src/bench/settings/calendar-fields.ts";
import { CLUTCH_FIELDS } from "#src/bench/settings/clutch-fields.ts";
import { FRONT_FIELDS } from "#src/bench/settings/front-fields.ts";
import { CURRENCY_FIELD, PRICE_FIELDS } from "#src/bench/settings/price-fields.ts";
import { RULE_FIELDS } from "#src/bench/settings/rule-fields.ts";
import type { SettingField } from "#src/bench/settings/setting-field.ts";
import { fieldErrors } from "#src/http/check-input.ts";

/** Every entry of the form, in order. */
export const SETTING_FIELDS: readonly SettingField[] = [
  ...FRONT_FIELDS,
  ...CALENDAR_FIELDS,
  ...PRICE_FIELDS,
  ...BENCH_FIELDS,
  ...RULE_FIELDS,
  ...CLUTCH_FIELDS,
];

/** What stands in the form, by field. */
export type TypedSettings = Readonly<Record<string, string>>;
/** What would be accepted, by the field that is not. */
export type SettingProblems = Readonly<Record<string, string>>;

export const writeSettings = (settings: ShopSettings): TypedSettings =>
  Object.fromEntries(SETTING_FIELDS.map(({ name, write }) => [name, write(settings)]));

/** The settings as a whole, or every entry that keeps them from being saved. */
export function readSettings(typed: TypedSettings): Outcome<ShopSettings, SettingProblems> {
  const currency = (typed[CURRENCY_FIELD] ?? "").trim();
  const settings: Branch = {};
  const problems: Record<string, string> = {};
  for (const { name, read } of SETTING_FIELDS) {
    const value = read(typed[name] ?? "", currency);
    if (value.ok) put(settings, name.split("."), value.value);
    else problems[name] = value.refusal;
  }
  const parsed = ShopSettingsSchema.safeParse(settings);
  for (const { field: path, accepted } of parsed.success ? [] : fieldErrors(parsed.error.issues, ShopSettingsSchema)) {
    const field = fieldAt(path);
    // A whole part is missing only where all of its fields could not be read, and each of those is named already.
    if (field !== undefined) problems[field.name] ??= inShopWords(accepted, field);
  }
  return parsed.success && Object.keys(problems).length === 0 ? accept(parsed.data) : refuse(problems);
}

type Branch = { [step: string]: unknown };

/** Puts a value at its path. The steps are our own field names, never what somebody typed. */
function put(branch: Branch, [step = "", ...rest]: readonly string[], value: unknown): void {
  if (rest.length === 0) {
    branch[step] = value;
    return;
  }
  const next = (branch[step] ?? {}) as Branch;
  branch[step] = next;
  put(next, rest, value);
}

/** The form's field that holds a path; a list is one field with all that is in it. */
const fieldAt = (path: string): SettingField | undefined =>
  SETTING_FIELDS.find(({ name }) => path === name || path.startsWith(`${name}.`));

/** A schema's built-in words are for programmers, and where it names another setting, the form says the label. */
function inShopWords(accepted: string, field: SettingField): string {
  if (accepted.startsWith("Invalid") && field.accepts !== undefined) return field.accepts;
  return accepted.replace(/[a-z]+[A-Z]\w*/g, (key) => {
    const label = SETTING_FIELDS.find(({ name }) => name.endsWith(`.${key}`))?.label;
    return label === undefined ? key : `“${label}”`;
  });
}
