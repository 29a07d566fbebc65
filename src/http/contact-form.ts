import * as z from "zod";
import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { minorDigits, readMajor } from "#shared/shop/minor-units.ts";
import { type Contact, ContactSchema, type ReturnTo, ReturnToSchema } from "#shared/shop/people.ts";
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

const ACCEPTED: Readonly<Record<ContactField, string>> = {
  name: "Write your name.",
  phone: "Write a phone number, such as +1 202-555-0143, or give an email address instead.",
  email: "Write an email address, such as name@mail.example.",
  collect: "Choose how you get the unit back.",
  line1: "Write the street and number, or choose to collect the unit.",
  line2: "Write at most 100 characters.",
  region: "Write the town and state or region.",
  postcode: "Write the postcode.",
  country: "Write the country as two capital letters, such as US.",
  serial: "Write at most 40 characters.",
  goAhead: "Write an amount, such as 100, or leave it empty.",
};

const Serial = z
  .string()
  .max(40)
  .regex(/^\P{Cc}*$/u);

/** Reads the form. Every field that is wrong is named, with what is accepted. */
export function readContact(
  typed: TypedContact,
  { country, currency }: { readonly country: string; readonly currency: string },
): Outcome<ReadContact, ContactProblems> {
  const problems: Partial<Record<ContactField, string>> = {};
  const say = (field: ContactField) => {
    problems[field] ??= ACCEPTED[field];
  };
  const given = (field: ContactField) => (typed[field] ?? "").trim();
  const phone = given("phone") === "" ? null : readPhone(given("phone"), country);
  if (phone !== null && !phone.ok) say("phone");
  const contact = ContactSchema.safeParse({
    name: given("name"),
    ...(phone?.ok ? { phone: phone.value } : {}),
    ...(given("email") === "" ? {} : { email: given("email") }),
  });
  for (const issue of contact.error?.issues ?? []) say(fieldOf(issue.path[0]));
  const returnTo = ReturnToSchema.safeParse(given("collect") === "yes" ? { collect: true } : addressOf(given));
  if (!returnTo.success) for (const field of wrongAddressFields(given)) say(field);
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

const fieldOf = (path: PropertyKey | undefined): ContactField =>
  CONTACT_FIELDS.find((field) => field === path) ?? "phone";

const addressOf = (given: (field: ContactField) => string) => ({
  lines: [given("line1"), given("line2")].filter((line) => line !== ""),
  region: given("region"),
  postcode: given("postcode"),
  country: given("country").toUpperCase(),
});

function wrongAddressFields(given: (field: ContactField) => string): readonly ContactField[] {
  const empty = (["line1", "region", "postcode"] as const).filter((field) => given(field) === "");
  const country = /^[A-Za-z]{2}$/.test(given("country")) ? [] : (["country"] as const);
  const wrong: readonly ContactField[] = [...empty, ...country];
  return wrong.length > 0 ? wrong : ["line1"];
}
