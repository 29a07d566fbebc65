import { minorDigits } from "#shared/shop/minor-units.ts";
import type { Quote } from "#shared/shop/prices.ts";

/** @example moneyText(12500, "USD", "en-US") // "$125.00" */
export function moneyText(minor: number, currency: string, locale: string): string {
  const format = new Intl.NumberFormat(locale, { style: "currency", currency });
  return format.format(minor / 10 ** minorDigits(currency));
}

/** @example quoteText(quote("full-rebuild", "set-nut", DEMO_PRICES), "en-US") // "from $425.00" */
export const quoteText = ({ minor, currency, from }: Quote, locale: string): string =>
  `${from ? "from " : ""}${moneyText(minor, currency, locale)}`;
