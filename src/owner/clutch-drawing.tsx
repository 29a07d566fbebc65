import { sourceText } from "#shared/basics/source.ts";
import type { Symptom, UnitFamily } from "#shared/craft/vocabulary.ts";
import { suspectsFor } from "#shared/triage/suspects.ts";

/** A part of the drawing that can be inked in. */
type DrawnPart = "washers" | "gear" | "needles" | "bearings";

const PART_NAMES: Readonly<Record<DrawnPart, string>> = {
  washers: "friction washers",
  gear: "gear",
  needles: "needle bearings",
  bearings: "ball bearings",
};

/** Where each suspect of the shop's own table sits in the drawing. */
const DRAWN: Readonly<Record<string, readonly DrawnPart[]>> = {
  "drive-gear": ["gear"],
  "needle-bearings": ["needles"],
  "friction-washer": ["washers"],
  "ball-bearing": ["bearings"],
  "washers-worn": ["washers"],
  "clutch-runs-hot": ["washers"],
  "worn-bearing-or-gear": ["bearings", "gear"],
  "shaft-seal": ["bearings"],
};

const suspectParts = (symptoms: readonly Symptom[]): ReadonlySet<DrawnPart> =>
  new Set(suspectsFor(symptoms, false).flatMap(({ id }) => DRAWN[id] ?? []));

/** The parts that symptoms point at, by name. @example suspectNames(["burnt-smell"]) // ["friction washers"] */
export const suspectNames = (symptoms: readonly Symptom[]): readonly string[] =>
  [...suspectParts(symptoms)].map((part) => PART_NAMES[part]);

/** Where it comes from that they point there. */
export const suspectSources = (symptoms: readonly Symptom[]): readonly string[] => [
  ...new Set(
    suspectsFor(symptoms, false)
      .filter(({ id }) => id in DRAWN)
      .map(({ source }) => sourceText(source)),
  ),
];

type DrawingProps = {
  readonly family: UnitFamily;
  readonly symptoms?: readonly Symptom[];
  readonly label: string;
  /** Only the end where the slip is set, by which the two builds are told apart. */
  readonly nutEnd?: boolean;
};

/**
 * The clutch in section, drawn by ourselves: nuts, spring washers, friction washers with the gear between them, the
 * bearings and the impeller on one shaft. The parts that the symptoms point at are inked in.
 */
export function ClutchDrawing({ family, symptoms = [], label, nutEnd = false }: DrawingProps) {
  const inked = suspectParts(symptoms);
  const ink = (part: DrawnPart) => (inked.has(part) ? "inked" : undefined);
  const half = (
    <>
      <rect x="10" y="46" width="12" height="10" />
      <rect x={family === "set-nut" ? 25 : 24} y="42" width="14" height="14" />
      {family !== "set-nut" && <path d="M41 44v12M43.5 44v12M46 44v12" />}
      <path d="M49 40l5 8-5 8M56 40l-5 8 5 8M56 40l5 8-5 8" />
      <path d="M64 38h6v18h-6z" />
      <path d="M72 28h5v26h-5zM103 28h5v26h-5z" class={ink("washers")} />
      <path d="M79 48V12l3-6 3 6 3-6 3 6 3-6 3 6 3-6v42z" class={ink("gear")} />
      <path d="M82 51h16v5H82z" class={ink("needles")} />
      <path d="M111 34h8v22h-8zM123 22h4v34h-4z" />
      <path d="M131 36h16v20h-16zM153 36h16v20h-16z" class={ink("bearings")} />
      <circle cx="139" cy="46" r="6" class={ink("bearings")} />
      <circle cx="161" cy="46" r="6" class={ink("bearings")} />
      <path d="M180 56c2-22 10-38 26-48v48zM206 8v48" />
    </>
  );
  return (
    <svg class="drawing" viewBox={nutEnd ? "4 22 106 78" : "0 0 220 122"} role="img" aria-label={label}>
      <path d="M4 57h210M4 65h210" />
      <g>{half}</g>
      <g transform="matrix(1 0 0 -1 0 122)">{half}</g>
    </svg>
  );
}
