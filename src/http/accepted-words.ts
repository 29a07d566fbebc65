import type * as z from "zod";

/** A JSON Schema as zod writes it, without references. */
export type SchemaNode = z.core.JSONSchema.BaseSchema;

/** What a schema accepts at a path, in words; `null` where the path leads nowhere. */
export function acceptedAt(schema: SchemaNode, path: readonly PropertyKey[]): string | null {
  const node = path.reduce<SchemaNode | null>((at, step) => (at === null ? null : stepInto(at, step)), schema);
  return node === null ? null : acceptedBy(node);
}

function stepInto(node: SchemaNode, step: PropertyKey): SchemaNode | null {
  const next = typeof step === "number" ? node.items : (node.properties?.[String(step)] ?? node.additionalProperties);
  if (typeof next === "object" && !Array.isArray(next)) return next;
  return (node.anyOf ?? []).map((option) => stepInto(option, step)).find((found) => found !== null) ?? null;
}

function acceptedBy(node: SchemaNode): string {
  if (node.const !== undefined) return JSON.stringify(node.const);
  if (node.enum !== undefined) return `one of ${node.enum.map((value) => JSON.stringify(value)).join(", ")}`;
  if (node.anyOf !== undefined) return node.anyOf.map(acceptedBy).join(" or ");
  return WORDS[String(node.type)]?.(node) ?? "null";
}

const WORDS: Readonly<Record<string, (node: SchemaNode) => string>> = {
  integer: (node) => `a whole number${rangeOf(node)}`,
  number: (node) => `a number${rangeOf(node)}`,
  boolean: () => "true or false",
  array: (node) => `a list${countOf(node.minItems, node.maxItems, "values")}`,
  object: (node) => `an object with ${fieldsOf(node).join(", ")}`,
  string: (node) => FORMATS[node.format ?? ""] ?? `text${countOf(node.minLength, node.maxLength, "characters")}`,
};

/** A record over fixed names says them as required, without a property each. */
const fieldsOf = ({ properties, required = [] }: SchemaNode): readonly string[] =>
  properties === undefined ? required : Object.keys(properties);

const FORMATS: Readonly<Record<string, string>> = {
  date: "a date that exists, YYYY-MM-DD",
  email: "an email address",
};

function rangeOf({ minimum, maximum, exclusiveMinimum }: SchemaNode): string {
  if (exclusiveMinimum !== undefined) return ` over ${exclusiveMinimum}, up to ${maximum}`;
  return minimum === undefined ? "" : ` from ${minimum} to ${maximum}`;
}

function countOf(least: number | undefined, most: number | undefined, what: string): string {
  if (most === undefined) return least === undefined ? "" : ` of at least ${least} ${what}`;
  return ` of ${least ?? 0} to ${most} ${what}`;
}
