import type { UnitFamily } from "#shared/craft/vocabulary.ts";
import { BUILDS, onFinding, PARTS } from "#shared/shop/parts.ts";

/** A place where one part lies: parts that look alike but fit different builds are never counted together. */
export type Shelf = { readonly part: string; readonly family: ShelfFamily };

/** For which build the shelf is; "any" = it fits all. */
const SHELF_FAMILIES = [...BUILDS, "any"] as const;
export type ShelfFamily = (typeof SHELF_FAMILIES)[number];

/** A shelf with what lies on it. */
export type NamedShelf = Shelf & {
  readonly name: string;
  readonly shared: boolean;
  /** Some are kept to spare though no job wants them. */
  readonly spared: boolean;
};

/** Every shelf of the shop, in the order of the catalogue. */
export const SHELVES: readonly NamedShelf[] = PARTS.flatMap(({ fits, ...part }) =>
  (fits === "any" ? (["any"] as const) : fits).map((family) => ({
    part: part.part,
    family,
    name: part.name,
    shared: part.shared ?? false,
    spared: part.when !== onFinding,
  })),
);

/** @example shelfOf({ part: "lock-nut", family: "set-nut" })?.name // "Lock nut" */
export const shelfOf = (shelf: { readonly part: string; readonly family: string }): NamedShelf | undefined =>
  SHELVES.find(({ part, family }) => part === shelf.part && family === shelf.family);

/** From which shelves a job takes a part: both where the build is not known yet, so that neither runs out. */
export const shelvesFor = (part: string, unitFamily: UnitFamily): readonly NamedShelf[] =>
  SHELVES.filter(
    (shelf) =>
      shelf.part === part && (shelf.family === "any" || unitFamily === "unknown" || shelf.family === unitFamily),
  );

export const sameShelf = (one: Shelf, other: Shelf): boolean => one.part === other.part && one.family === other.family;

/** One text for a shelf, as it stands in an address. @example shelfKey({ part: "lock-nut", family: "any" }) // "lock-nut/any" */
export const shelfKey = ({ part, family }: Shelf): string => `${part}/${family}`;
