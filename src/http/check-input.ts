import * as z from "zod";
import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { acceptedAt, type SchemaNode } from "#src/http/accepted-words.ts";
import { type FieldError, notAccepted } from "#src/http/problem.ts";

/**
 * Input from outside as the schema has it, or the 422 that names every field that is not accepted.
 * @param more what is known to be wrong besides; a field that the schema refuses already is not named again
 */
export function checkInput<Schema extends z.ZodType>(
  schema: Schema,
  input: unknown,
  more: readonly FieldError[] = [],
): Outcome<z.output<Schema>, Response> {
  const parsed = schema.safeParse(input);
  if (parsed.success && more.length === 0) return accept(parsed.data);
  const errors = parsed.success ? [] : fieldErrors(parsed.error.issues, schema, input);
  const others = more.filter(({ field }) => !errors.some((error) => error.field === field));
  return refuse(notAccepted([...errors, ...others]));
}

type Issue = z.core.$ZodIssue;

/**
 * Each field once, dotted where nested; a field that the schema does not know is named too.
 * @param input what was checked; it tells which branch of a union was meant
 */
export function fieldErrors(issues: readonly Issue[], schema: z.ZodType, input?: unknown): readonly FieldError[] {
  const node = jsonSchemaOf(schema);
  const found = new Map<string, string>();
  for (const { issue, path } of issues.flatMap((each) => leavesOf(each, [], input))) {
    if (issue.code === "unrecognized_keys") {
      for (const key of issue.keys) found.set(fieldName([...path, key]), "no such field");
    } else if (!found.has(fieldName(path))) {
      found.set(fieldName(path), ownWords(issue) ?? acceptedAt(node, path) ?? issue.message);
    }
  }
  return [...found].map(([field, accepted]) => ({ field, accepted }));
}

type Leaf = { readonly issue: Issue; readonly path: readonly PropertyKey[] };

/**
 * Of a union, the branch that knows most of the given fields was meant, and tells what is wrong; of equals the one with
 * the least to mend. Where no branch knows any of them, the union speaks as a whole.
 */
function leavesOf(issue: Issue, above: readonly PropertyKey[], input: unknown): readonly Leaf[] {
  const path = [...above, ...issue.path];
  if (issue.code !== "invalid_union") return [{ issue, path }];
  const value = valueAt(input, issue.path);
  const [best] = issue.errors
    .map((branch) => ({
      known: countFields(value) - countUnknown(branch),
      leaves: branch.flatMap((each) => leavesOf(each, path, value)),
    }))
    .toSorted((one, other) => other.known - one.known || one.leaves.length - other.leaves.length);
  return best !== undefined && best.known > 0 ? best.leaves : [{ issue, path }];
}

const countFields = (value: unknown): number => (isObject(value) ? Object.keys(value).length : 0);

const countUnknown = (branch: readonly Issue[]): number =>
  branch.flatMap((issue) => (issue.code === "unrecognized_keys" && issue.path.length === 0 ? issue.keys : [])).length;

const valueAt = (input: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce((value, step) => (isObject(value) || Array.isArray(value) ? Reflect.get(value, step) : undefined), input);

const isObject = (value: unknown): value is object =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** Messages that our own schemas carry, where the JSON Schema cannot say it. */
function ownWords(issue: Issue): string | null {
  if (issue.code === "custom") return issue.message;
  if (issue.code === "not_multiple_of") return `a multiple of ${issue.divisor}`;
  return issue.code === "invalid_format" && issue.format === "regex" ? issue.message : null;
}

const fieldName = (path: readonly PropertyKey[]): string => (path.length === 0 ? "body" : path.map(String).join("."));

const jsonSchemas = new WeakMap<z.ZodType, SchemaNode>();

function jsonSchemaOf(schema: z.ZodType): SchemaNode {
  const made = jsonSchemas.get(schema) ?? z.toJSONSchema(schema, { io: "input" });
  jsonSchemas.set(schema, made);
  return made;
}
