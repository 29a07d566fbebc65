import type { Context } from "hono";
import type { Fields } from "#shared/intake/read-answer.ts";

/** A posted form's first value of each field, by name. A file sent in place of text is left out. */
export async function readForm(c: Context): Promise<Readonly<Record<string, string>>> {
  const fields = await readFields(c);
  return Object.fromEntries(Object.entries(fields).map(([name, [first = ""]]) => [name, first]));
}

/** The same with every value, for fields that come more than once. What is no form has no fields. */
export async function readFields(c: Context): Promise<Fields> {
  return Object.fromEntries(
    Object.entries(await formIn(c)).map(([name, value]) => [
      name,
      [value].flat().filter((one) => typeof one === "string"),
    ]),
  );
}

/** The platform throws a TypeError where a body is not the form that its content type says. */
async function formIn(c: Context) {
  try {
    return await c.req.parseBody({ all: true });
  } catch (error) {
    if (error instanceof TypeError) return {};
    throw error;
  }
}
