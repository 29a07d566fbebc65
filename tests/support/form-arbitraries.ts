import * as fc from "fast-check";
import { RIDING, SYMPTOMS, UNIT_FAMILIES, WASHERS } from "#shared/craft/vocabulary.ts";
import { FIELD, type Fields } from "#shared/intake/read-answer.ts";

/** A form's fields as they are sent: each name with all its values. */
export const asSent = (fields: Readonly<Record<string, string | readonly string[]>>): Fields =>
  Object.fromEntries(
    Object.entries(fields).map(([name, value]) => [name, typeof value === "string" ? [value] : value]),
  );

const choices = fc.constantFrom<string>(
  ...UNIT_FAMILIES,
  ...RIDING,
  ...WASHERS,
  ...SYMPTOMS,
  "yes",
  "no",
  "known",
  "never",
);
const numbers = fc.oneof(
  fc.integer({ min: 0, max: 2500 }).map(String),
  fc.integer({ min: 0, max: 2_500_000 }).map((thousandths) => (thousandths / 1000).toString().replace(".", ",")),
);
const dates = fc.date({ min: new Date("2020-01-01"), max: new Date("2028-01-01"), noInvalidDate: true });
const texts = fc.oneof(
  choices,
  numbers,
  dates.map((date) => date.toISOString().slice(0, 10)),
  fc.constantFrom("psi", "kPa", "bar", "", "2027-02-31"),
  fc.string({ unit: "binary" }),
);

const names = fc.oneof(
  { weight: 9, arbitrary: fc.constantFrom<string>(...Object.values(FIELD)) },
  { weight: 1, arbitrary: fc.oneof(fc.string(), fc.constantFrom("__proto__", "constructor", "toString")) },
);

/** Anything that a form, or somebody who forges one, may send. */
export const anyFields: fc.Arbitrary<Fields> = fc.dictionary(names, fc.array(texts, { maxLength: 3 }));
