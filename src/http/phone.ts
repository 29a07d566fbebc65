import { type CountryCode, isSupportedCountry, parsePhoneNumberFromString } from "libphonenumber-js/core";
import { PHONE_METADATA } from "#build/phone-metadata.ts";
import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";

/**
 * A phone number as E.164, read as dialled in the given country. Judged by length and country code only: the numbers
 * kept for fiction in some countries are refused by the stricter check.
 * @example readPhone("(202) 555-0143", "US") // { ok: true, value: "+12025550143" }
 */
export function readPhone(text: string, country: string): Outcome<string, { readonly reason: "not-a-phone-number" }> {
  const home = isSupportedCountry(country as CountryCode, PHONE_METADATA) ? (country as CountryCode) : undefined;
  const parsed = parsePhoneNumberFromString(text, home === undefined ? {} : { defaultCountry: home }, PHONE_METADATA);
  return parsed?.isPossible() ? accept(parsed.number) : refuse({ reason: "not-a-phone-number" });
}
