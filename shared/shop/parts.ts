import { DEFAULT, PRACTICE, type Source } from "#shared/basics/source.ts";
import type { BenchJob } from "#shared/calendar/calendar-settings.ts";
import type { UnitFamily } from "#shared/craft/vocabulary.ts";

/** What the bench lays out before the unit arrives. */
export type Part = { readonly part: string; readonly name: string; readonly count: number; readonly source: Source };

type PartRule = Part & { readonly when: (it: PartsNeeded) => boolean };
export type PartsNeeded = { readonly work: BenchJob; readonly unitFamily: UnitFamily; readonly ceramic: boolean };

const rebuilt = ({ work }: PartsNeeded) => work !== "slip-check";
const mayHaveShims = ({ unitFamily }: PartsNeeded) => unitFamily !== "set-nut";

/** Only parts of the maker's own quality go in (common practice). Counts: default of this project, confirmed on opening. */
const PARTS: readonly PartRule[] = [
  {
    part: "friction-washers",
    name: "Friction washers, metal",
    count: 2,
    source: PRACTICE,
    when: (it) => rebuilt(it) && !it.ceramic,
  },
  {
    part: "friction-washers-for-ceramic",
    name: "Friction washers, metal, in place of ceramic",
    count: 2,
    source: PRACTICE,
    when: (it) => rebuilt(it) && it.ceramic,
  },
  { part: "spring-washers", name: "Spring washer stack", count: 1, source: DEFAULT, when: rebuilt },
  { part: "needle-bearings", name: "Needle bearing set for the gear", count: 1, source: DEFAULT, when: rebuilt },
  { part: "ball-bearings", name: "Ball bearings for the shaft", count: 2, source: DEFAULT, when: rebuilt },
  { part: "seal-set", name: "Seals and O-rings", count: 1, source: DEFAULT, when: rebuilt },
  { part: "plate-screws", name: "Retaining plate screws", count: 1, source: DEFAULT, when: rebuilt },
  { part: "shim-washers", name: "Shim washer assortment", count: 1, source: PRACTICE, when: mayHaveShims },
  { part: "lock-nut", name: "Lock nut", count: 1, source: DEFAULT, when: () => true },
  { part: "thread-locker", name: "Thread locker", count: 1, source: PRACTICE, when: () => true },
  {
    part: "drive-gear",
    name: "Drive gear, on hand",
    count: 1,
    source: DEFAULT,
    when: ({ work }) => work === "stop-riding",
  },
];

/** @example partsFor({ work: "slip-check", unitFamily: "set-nut", ceramic: false }) // lock nut, thread locker */
export const partsFor = (needed: PartsNeeded): readonly Part[] =>
  PARTS.filter((rule) => rule.when(needed)).map(({ when: _, ...part }) => part);
