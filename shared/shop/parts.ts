import { DEFAULT, PRACTICE, type Source } from "#shared/basics/source.ts";
import type { BenchJob } from "#shared/calendar/calendar-settings.ts";
import type { UnitFamily } from "#shared/craft/vocabulary.ts";

/** What the bench lays out before the unit arrives. */
export type Part = { readonly part: string; readonly name: string; readonly count: number; readonly source: Source };

export type PartsNeeded = { readonly work: BenchJob; readonly unitFamily: UnitFamily; readonly ceramic: boolean };

/** How a unit may be built; the owner may not know. */
export const BUILDS = ["shim-stack", "set-nut"] as const;
type Build = (typeof BUILDS)[number];

/** A part that may go into a unit, and which jobs lay it out from the start. */
export type CataloguePart = Part & {
  /** The builds it is kept for, each on a shelf of its own; "any" = one shelf for all. */
  readonly fits: readonly Build[] | "any";
  /** One bottle or box serves many jobs: no job reserves it, and a new one is wanted when the last is begun. */
  readonly shared?: true;
  readonly when: (it: PartsNeeded) => boolean;
};

const rebuilt = ({ work }: PartsNeeded) => work !== "slip-check";
const mayHaveShims = ({ unitFamily }: PartsNeeded) => unitFamily !== "set-nut";
const always = () => true;
/** Only where the inspection finds the old one worn or broken; too dear to keep to spare. */
export const onFinding = () => false;

/**
 * Only parts of the maker's own quality go in (common practice). Counts: default of this project, confirmed on opening.
 * Which parts both builds share is not published, so each build has its own shelf.
 */
export const PARTS: readonly CataloguePart[] = [
  {
    part: "friction-washers",
    name: "Friction washers, metal",
    count: 2,
    source: PRACTICE,
    fits: BUILDS,
    when: (it) => rebuilt(it) && !it.ceramic,
  },
  {
    part: "friction-washers-for-ceramic",
    name: "Friction washers, metal, in place of ceramic",
    count: 2,
    source: PRACTICE,
    fits: BUILDS,
    when: (it) => rebuilt(it) && it.ceramic,
  },
  { part: "spring-washers", name: "Spring washer stack", count: 1, source: DEFAULT, fits: BUILDS, when: rebuilt },
  {
    part: "needle-bearings",
    name: "Needle bearing set for the gear",
    count: 1,
    source: DEFAULT,
    fits: BUILDS,
    when: rebuilt,
  },
  {
    part: "ball-bearings",
    name: "Ball bearings for the shaft",
    count: 2,
    source: DEFAULT,
    fits: BUILDS,
    when: rebuilt,
  },
  { part: "seal-set", name: "Seals and O-rings", count: 1, source: DEFAULT, fits: BUILDS, when: rebuilt },
  { part: "plate-screws", name: "Retaining plate screws", count: 1, source: DEFAULT, fits: BUILDS, when: rebuilt },
  {
    part: "shim-washers",
    name: "Shim washer assortment",
    count: 1,
    source: PRACTICE,
    fits: ["shim-stack"],
    shared: true,
    when: mayHaveShims,
  },
  { part: "lock-nut", name: "Lock nut", count: 1, source: DEFAULT, fits: BUILDS, when: always },
  {
    part: "thread-locker",
    name: "Thread locker",
    count: 1,
    source: PRACTICE,
    fits: "any",
    shared: true,
    when: always,
  },
  {
    part: "drive-gear",
    name: "Drive gear, on hand",
    count: 1,
    source: DEFAULT,
    fits: BUILDS,
    when: ({ work }) => work === "stop-riding",
  },
  { part: "shaft", name: "Shaft", count: 1, source: DEFAULT, fits: BUILDS, when: onFinding },
  { part: "retaining-plate", name: "Retaining plate", count: 1, source: DEFAULT, fits: BUILDS, when: onFinding },
  { part: "set-nut", name: "Set nut", count: 1, source: DEFAULT, fits: ["set-nut"], when: onFinding },
  { part: "housing", name: "Housing", count: 1, source: DEFAULT, fits: BUILDS, when: onFinding },
  { part: "impeller", name: "Impeller", count: 1, source: DEFAULT, fits: BUILDS, when: onFinding },
];

/** @example partsFor({ work: "slip-check", unitFamily: "set-nut", ceramic: false }) // lock nut, thread locker */
export const partsFor = (needed: PartsNeeded): readonly Part[] =>
  PARTS.filter((rule) => rule.when(needed)).map(({ part, name, count, source }) => ({ part, name, count, source }));

/** Every part that a unit of this family may take, whatever was planned; the list the bench adds from. */
export const partsThatFit = (unitFamily: UnitFamily): readonly CataloguePart[] =>
  PARTS.filter(({ fits }) => fits === "any" || unitFamily === "unknown" || fits.includes(unitFamily));
