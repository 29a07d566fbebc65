import { accept, refuse } from "#shared/basics/outcome.ts";
import { BENCH_JOBS } from "#shared/calendar/calendar-settings.ts";
import { UNIT_FAMILIES } from "#shared/craft/vocabulary.ts";
import { optionWords } from "#shared/messages/option-words.ts";
import { PRICE_WORDS } from "#shared/messages/shop-settings-words.ts";
import { WORK_WORDS } from "#shared/messages/verdict-words.ts";
import { majorText, minorDigits, readMajor } from "#shared/shop/minor-units.ts";
import { numberField, type SettingField } from "#src/bench/settings/setting-field.ts";
import { type ReadSetting, readText } from "#src/bench/settings/setting-text.ts";

const group = "prices";
export const CURRENCY_FIELD = "prices.currency";

/** What each work costs on each kind of unit, and how long it usually takes. */
export const PRICE_FIELDS: readonly SettingField[] = [
  { group, name: CURRENCY_FIELD, ...PRICE_WORDS.currency, read: readText, write: ({ prices }) => prices.currency },
  ...BENCH_JOBS.flatMap((work) =>
    UNIT_FAMILIES.map(
      (family): SettingField => ({
        group,
        name: `prices.byJob.${work}.${family}`,
        label: `${PRICE_WORDS.price.label}: ${WORK_WORDS[work]}, ${optionWords("unitFamily", family)}`,
        accepts: PRICE_WORDS.price.accepts,
        read: readPrice,
        write: ({ prices }) => majorText(prices.byJob[work][family], minorDigits(prices.currency)),
      }),
    ),
  ),
  ...BENCH_JOBS.map((work) =>
    numberField({
      group,
      name: `prices.usualDays.${work}`,
      label: `${PRICE_WORDS.usualDays.label}: ${WORK_WORDS[work]}`,
      accepts: PRICE_WORDS.usualDays.accepts,
      of: ({ prices }) => prices.usualDays[work],
    }),
  ),
];

const IS_CURRENCY = /^[A-Z]{3}$/;
const USUAL_DIGITS = 2;

/** A currency that cannot be read is told beside its own field; the price is then read as most are written. */
function readPrice(text: string, currency: string): ReadSetting<number> {
  const digits = IS_CURRENCY.test(currency) ? minorDigits(currency) : USUAL_DIGITS;
  const read = readMajor(text, digits);
  return read.ok ? accept(read.value) : refuse(PRICE_WORDS.price.accepts);
}
