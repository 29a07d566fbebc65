import { describe, expect, it } from "vitest";
import { ContactSchema, ReturnToSchema } from "#shared/shop/people.ts";

const ADDRESS = { lines: ["Rowan Pike", "9 Reed Bank"], postcode: "00000", region: "Ottersby", country: "US" };
const fieldsRefused = (schema: typeof ContactSchema | typeof ReturnToSchema, value: unknown) =>
  schema.safeParse(value).error?.issues.map(({ path }) => path.join(".")) ?? [];

describe("a contact", () => {
  it.each([
    [{ name: "Rowan Pike", phone: "202-555-0143" }],
    [{ name: "Rowan Pike", email: "rowan@reed-bank.example" }],
    [{ name: "Rowan Pike", phone: "202-555-0143", email: "rowan@reed-bank.example" }],
  ])("is a name and at least one way to reach the owner: %j", (contact) => {
    expect(ContactSchema.parse(contact)).toEqual(contact);
  });

  it("loses the spaces around it", () => {
    expect(ContactSchema.parse({ name: " Rowan Pike ", phone: " 202-555-0143 " })).toEqual({
      name: "Rowan Pike",
      phone: "202-555-0143",
    });
  });

  it.each<[string, object, readonly string[]]>([
    ["no way to reach the owner", { name: "Rowan Pike" }, ["phone"]],
    ["no name", { phone: "202-555-0143" }, ["name"]],
    ["an empty name", { name: "  ", phone: "202-555-0143" }, ["name"]],
    ["a name with a line break", { name: "Rowan\nPike", phone: "202-555-0143" }, ["name"]],
    ["a name that never ends", { name: "R".repeat(101), phone: "202-555-0143" }, ["name"]],
    ["an address that is no email", { name: "Rowan Pike", email: "rowan" }, ["email"]],
    ["an email that never ends", { name: "Rowan Pike", email: `${"r".repeat(250)}@reed.example` }, ["email"]],
    ["a field that nobody asked for", { name: "Rowan Pike", phone: "202-555-0143", born: 1980 }, [""]],
  ])("is refused with %s, by the field", (_because, contact, fields) => {
    expect(fieldsRefused(ContactSchema, contact)).toEqual(fields);
  });
});

describe("where the unit goes back to", () => {
  it.each([[ADDRESS], [{ collect: true }]])("is an address, or nowhere: %j", (returnTo) => {
    expect(ReturnToSchema.parse(returnTo)).toEqual(returnTo);
  });

  it.each<[string, object]>([
    ["both", { ...ADDRESS, collect: true }],
    ["neither", {}],
    ["not collected", { collect: false }],
    ["no line", { ...ADDRESS, lines: [] }],
    ["an empty line", { ...ADDRESS, lines: ["Rowan Pike", ""] }],
    ["five lines", { ...ADDRESS, lines: ["a", "b", "c", "d", "e"] }],
    ["a country that is no code", { ...ADDRESS, country: "us" }],
    ["a country in words", { ...ADDRESS, country: "United States" }],
    ["no postcode", { ...ADDRESS, postcode: " " }],
  ])("is refused with %s", (_because, returnTo) => {
    expect(ReturnToSchema.safeParse(returnTo).success).toBe(false);
  });
});
