import { sourceText } from "#shared/basics/source.ts";
import { UNIT_FAMILIES } from "#shared/craft/vocabulary.ts";
import { optionWords } from "#shared/messages/option-words.ts";
import { BENCH_WORDS } from "#shared/messages/shop-settings-words.ts";
import { BENCH_SOURCE } from "#shared/shop/bench-settings.ts";
import { numberField, type SettingField } from "#src/bench/settings/setting-field.ts";
import { readNumberOrNone } from "#src/bench/settings/setting-text.ts";

const shared = { group: "bench", source: sourceText(BENCH_SOURCE) } as const;

/** What the bench counts, waits for and keeps on the shelf. */
export const BENCH_FIELDS: readonly SettingField[] = [
  ...UNIT_FAMILIES.map(
    (family): SettingField => ({
      ...shared,
      name: `bench.needles.${family}`,
      label: `${BENCH_WORDS.needles.label}: ${optionWords("unitFamily", family)}`,
      accepts: BENCH_WORDS.needles.accepts,
      read: readNumberOrNone,
      write: ({ bench }) => String(bench.needles[family] ?? ""),
    }),
  ),
  ...(["approvalDays", "spareParts", "orderAheadDays"] as const).map((key) =>
    numberField({ ...shared, name: `bench.${key}`, ...BENCH_WORDS[key], of: ({ bench }) => bench[key] }),
  ),
];
