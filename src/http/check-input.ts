import * as z from "zod";
import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { acceptedAt, type SchemaNode } from "#src/http/accepted-words.ts";
import { type FieldError, notAccepted } from "#src/http/problem.ts";

/** Input from outside as the schema has it, or the 422 that names every field that is not accepted. */
export function checkInput<Schema extends z.ZodType>(
  schema: Schema,
  input: unknown,
): Outcome<z.output<Schema>, Response> {
  const parsed = schema.safeParse(input);
  return parsed.success ? accept(parsed.data) : refuse(notAccepted(fieldErrors(parsed.error.issues, schema)));
}

type Issue = z.core.$ZodIssue;

/** Each field once, dotted where nested; a field that the schema does not know is named too. */
export function fieldErrors(issues: readonly Issue[], schema: z.ZodType): readonly FieldError[] {
  const node = jsonSchemaOf(schema);
  const found = new Map<string, string>();
  for (const { issue, path } of issues.flatMap((each) => leavesOf(each, []))) {
    if (issue.code === "unrecognized_keys") {
      for (const key of issue.keys) found.set(fieldName([...path, key]), "no such field");
    } else if (!found.has(fieldName(path))) {
      found.set(fieldName(path), ownWords(issue) ?? acceptedAt(node, path) ?? issue.message);
    }
  }
  return [...found].map(([field, accepted]) => ({ field, accepted }));
}

type Leaf = { readonly issue: Issue; readonly path: readonly PropertyKey[] };

/** Of a union, the branch that fits best tells what is wrong; where none fits better, the union as a whole does. */
function leavesOf(issue: Issue, above: readonly PropertyKey[]): readonly Leaf[] {
  const path = [...above, ...issue.path];
  if (issue.code !== "invalid_union") return [{ issue, path }];
  const branches = issue.errors.map((branch) => branch.flatMap((each) => leavesOf(each, path)));
  const fewest = Math.min(...branches.map((leaves) => leaves.length));
  const [best = [], ...others] = branches.filter((leaves) => leaves.length === fewest);
  return others.length === 0 && best.length > 0 ? best : [{ issue, path }];
}

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
