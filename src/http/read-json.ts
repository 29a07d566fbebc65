import type * as z from "zod";
import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { checkInput } from "#src/http/check-input.ts";
import { type FieldError, problem } from "#src/http/problem.ts";

/** A body that passed: its value, and the text as sent, which names the request for a repeat of it. */
export type JsonBody<Value> = { readonly value: Value; readonly text: string };

/**
 * Reads a request's JSON body; the refusal is the finished answer. Its size is limited for all routes at once.
 * @param alsoWrong finds fields that are wrong for a reason that no schema can say
 */
export async function readJson<Schema extends z.ZodType>(
  request: Request,
  schema: Schema,
  alsoWrong: (input: unknown) => Promise<readonly FieldError[]> = async () => [],
): Promise<Outcome<JsonBody<z.output<Schema>>, Response>> {
  if (!isJson(request.headers.get("content-type"))) {
    return refuse(problem({ status: 415, detail: "Send the body as application/json." }));
  }
  // A sender that goes away half-way is no failure of ours.
  const text = await request.text().catch(() => "");
  const parsed = parseJson(text);
  if (!parsed.ok) return refuse(problem({ status: 400, detail: "The body is not well-formed JSON." }));
  const checked = checkInput(schema, parsed.value, await alsoWrong(parsed.value));
  return checked.ok ? accept({ value: checked.value, text }) : checked;
}

const isJson = (contentType: string | null): boolean =>
  contentType?.split(";")[0]?.trim().toLowerCase() === "application/json";

function parseJson(text: string): Outcome<unknown, "not-json"> {
  try {
    return accept(JSON.parse(text));
  } catch {
    return refuse("not-json");
  }
}
