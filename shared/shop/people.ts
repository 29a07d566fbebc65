import * as z from "zod";

/** Control characters have no place in a name or an address line. */
const line = (most: number) =>
  z
    .string()
    .trim()
    .min(1)
    .max(most)
    .regex(/^\P{Cc}*$/u, "No control characters");

/** How to reach the owner: a name and at least one of phone and email. */
export const ContactSchema = z
  .strictObject({
    name: line(100),
    phone: line(40).optional(),
    email: z.email().max(254).optional(),
  })
  .refine((contact) => contact.phone !== undefined || contact.email !== undefined, {
    path: ["phone"],
    message: "A phone number or an email address is needed",
    // Looked at whatever else is wrong, so that all is named at once.
    when: ({ value }) => typeof value === "object" && value !== null,
  });
export type Contact = z.infer<typeof ContactSchema>;

/** ISO 3166-1 alpha-2. */
export const CountrySchema = z.string().regex(/^[A-Z]{2}$/, "Two capital letters, as in ISO 3166-1");

export const AddressSchema = z.strictObject({
  lines: z.array(line(100)).min(1).max(4),
  postcode: line(16),
  region: line(60),
  country: CountrySchema,
});

/** Where the unit goes when it is done. */
export const ReturnToSchema = z.union([AddressSchema, z.strictObject({ collect: z.literal(true) })]);
export type ReturnTo = z.infer<typeof ReturnToSchema>;
