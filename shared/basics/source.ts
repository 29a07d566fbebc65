/**
 * Where a number or a rule comes from, said beside it wherever it is shown.
 * `published`: a document anyone can read, named in `where`.
 * `practice`: common practice of the trade, no published source.
 * `default`: a default of this project, which the shop can change. `shop`: the shop has changed it.
 * `memory`: general knowledge, not looked up.
 */
export type Source =
  | { readonly kind: "published"; readonly where: string }
  | { readonly kind: "practice" }
  | { readonly kind: "default" }
  | { readonly kind: "shop" }
  | { readonly kind: "memory" };

export const PRACTICE: Source = { kind: "practice" };
export const DEFAULT: Source = { kind: "default" };
export const BY_SHOP: Source = { kind: "shop" };
export const FROM_MEMORY: Source = { kind: "memory" };
export const published = (where: string): Source => ({ kind: "published", where });

/** @example sourceText(PRACTICE) // "common practice, no published source" */
export function sourceText(source: Source): string {
  switch (source.kind) {
    case "published":
      return source.where;
    case "practice":
      return "common practice, no published source";
    case "default":
      return "default of this project";
    case "shop":
      return "set by this shop";
    case "memory":
      return "general practice, from memory, no published source";
  }
}
