import type * as z from "zod";

/** A JSON Schema as zod writes it, without references. */
export type SchemaNode = z.core.JSONSchema.BaseSchema;

/** What a schema accepts at a path, in words; `null` where the path leads nowhere. */
export function acceptedAt(schema: SchemaNode, path: readonly PropertyKey[]): string | null {
  const node = path.reduce<SchemaNode | null>((at, step) => (at === null ? null : stepInto(at, step)), schema);
  return node === null ? null : acceptedBy(node);
}

function stepInto(node: SchemaNode, step: PropertyKey): SchemaNode | null {
  const next = typeof step === "number" ? node.items : node.properties?.[String(step)];
  if (typeof next === "object" && !Array.isArray(next)) return next;
  return (node.anyOf ?? []).map((option) => stepInto(option, step)).find((found) => found !== null) ?? null;
}

function acceptedBy(node: SchemaNode): string {
  if (node.const !== undefined) return JSON.stringify(node.const);
  if (node.enum !== undefined) return `one of ${node.enum.map((value) => JSON.stringify(value)).join(", ")}`;
  if (node.anyOf !== undefined) return node.anyOf.map(acceptedBy).join(" or ");
  switch (node.type) {
    case "integer":
      return `a whole number${rangeOf(node)}`;
    case "number":
      return `a number${rangeOf(node)}`;
    case "boolean":
      return "true or false";
    case "array":
      return `a list${countOf(node.minItems, node.maxItems, "values")}`;
    case "object":
      return `an object with ${Object.keys(node.properties ?? {}).join(", ")}`;
    case "string":
      return FORMATS[node.format ?? ""] ?? `text${countOf(node.minLength, node.maxLength, "characters")}`;
    default:
      return "null";
  }
}

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
