/** What JSON can hold. A member that is `undefined` is no member. */
export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json | undefined };

/**
 * JSON text that the same value always gets: keys in the order of their UTF-16 code units, no blanks, numbers and
 * strings as ECMAScript writes them. That is RFC 8785 (JSON Canonicalization Scheme) but for two things: a key whose
 * value is `undefined` is left out, as JSON.stringify does; and half a character (a lone surrogate), which RFC 8785
 * refuses, is written as U+FFFD, which is what it becomes in UTF-8 anyway.
 * @throws on a number that JSON cannot hold (NaN, an infinity)
 * @example canonicalJson({ b: 1, a: [true, null] }) // '{"a":[true,null],"b":1}'
 */
export function canonicalJson(value: Json): string {
  if (typeof value === "string") return JSON.stringify(value.replace(LONE_SURROGATE, "\uFFFD"));
  if (typeof value === "number" && !Number.isFinite(value)) throw new Error(`JSON cannot hold ${value}`);
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  if (isList(value)) return `[${value.map(canonicalJson).join(",")}]`;
  const members = Object.entries(value).toSorted(([one], [other]) => (one < other ? -1 : 1));
  const written = members.flatMap(([key, member]) =>
    member === undefined ? [] : [`${canonicalJson(key)}:${canonicalJson(member)}`],
  );
  return `{${written.join(",")}}`;
}

const LONE_SURROGATE = /\p{Surrogate}/gu;

const isList = (value: object): value is readonly Json[] => Array.isArray(value);
