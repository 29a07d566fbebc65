import * as z from "zod";
import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { CONTACT_PROBLEMS } from "#shared/messages/contact-words.ts";
import { minorDigits, readMajor } from "#shared/shop/minor-units.ts";
import { AddressSchema, type Contact, ContactSchema, type ReturnTo } from "#shared/shop/people.ts";
import { readPhone } from "#src/http/phone.ts";

/** The contact form as typed, by field name. */
export const CONTACT_FIELDS = [
  "name",
  "phone",
  "email",
  "collect",
  "line1",
  "line2",
  "region",
  "postcode",
  "country",
  "serial",
  "goAhead",
] as const;
export type ContactField = (typeof CONTACT_FIELDS)[number];
export type TypedContact = Readonly<Partial<Record<ContactField, string>>>;
export type ContactProblems = Readonly<Partial<Record<ContactField, string>>>;

export type ReadContact = {
  readonly contact: Contact;
  readonly returnTo: ReturnTo;
  readonly serial: string | null;
  readonly goAheadMinor: number | null;
};

const Serial = z
  .string()
  .max(40)
  .regex(/^\P{Cc}*$/u);

const COLLECTED = { success: true, data: { collect: true }, error: undefined } as const;

/** Reads the form. Every field that is wrong is named, with what is accepted. */
export function readContact(
  typed: TypedContact,
  { country, currency }: { readonly country: string; readonly currency: string },
): Outcome<ReadContact, ContactProblems> {
  const problems: Partial<Record<ContactField, string>> = {};
  const say = (field: ContactField) => {
    problems[field] ??= CONTACT_PROBLEMS[field];
  };
  const given = (field: ContactField) => (typed[field] ?? "").trim();
  const phone = given("phone") === "" ? null : readPhone(given("phone"), country);
  if (phone !== null && !phone.ok) say("phone");
  const contact = ContactSchema.safeParse({
    name: given("name"),
    ...(phone?.ok ? { phone: phone.value } : {}),
    ...(given("email") === "" ? {} : { email: given("email") }),
  });
  for (const issue of contact.error?.issues ?? []) say(fieldAt(issue.path));
  const returnTo = given("collect") === "yes" ? COLLECTED : AddressSchema.safeParse(addressOf(given));
  for (const issue of returnTo.error?.issues ?? []) say(fieldAt(issue.path));
  if (!Serial.safeParse(given("serial")).success) say("serial");
  const goAhead = given("goAhead") === "" ? accept(null) : readMajor(given("goAhead"), minorDigits(currency));
  if (!goAhead.ok) say("goAhead");
  if (!contact.success || !returnTo.success || !goAhead.ok || Object.keys(problems).length > 0) return refuse(problems);
  return accept({
    contact: contact.data,
    returnTo: returnTo.data,
    serial: given("serial") === "" ? null : given("serial"),
    goAheadMinor: goAhead.value,
  });
}

function fieldAt([first, index]: readonly PropertyKey[]): ContactField {
  if (first === "lines") return index === 1 ? "line2" : "line1";
  return CONTACT_FIELDS.find((field) => field === first) ?? "phone";
}

const addressOf = (given: (field: ContactField) => string) => ({
  lines: [given("line1"), ...(given("line2") === "" ? [] : [given("line2")])],
  region: given("region"),
  postcode: given("postcode"),
  country: given("country").toUpperCase(),
});
