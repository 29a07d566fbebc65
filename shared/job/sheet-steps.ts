import { PRACTICE, type Source } from "#shared/basics/source.ts";
import type { UnitFamily } from "#shared/craft/vocabulary.ts";
import { INSPECTED_PARTS, type InspectedPart, type SheetEntry, type SheetStepId } from "#shared/job/sheet-entry.ts";
import type { Verdict } from "#shared/triage/verdict.ts";

/** What is on the bench, as far as the choice of steps goes. */
export type SheetWork = { readonly work: Exclude<Verdict, "not-due">; readonly unitFamily: UnitFamily };

/** One step of the bench sheet. Its words are with the messages. */
export type SheetStep = {
  readonly id: SheetStepId;
  readonly kind: Exclude<SheetEntry["kind"], "skipped">;
  readonly applies: (it: SheetWork) => boolean;
  readonly source: Source;
};

const always = () => true;
const apart = ({ work }: SheetWork) => work !== "slip-check";
const maybe = (family: UnitFamily) => (it: SheetWork) => it.unitFamily === family || it.unitFamily === "unknown";
const step = (id: SheetStepId, kind: SheetStep["kind"], applies: SheetStep["applies"]): SheetStep => ({
  id,
  kind,
  applies,
  source: PRACTICE,
});

/** In the order in which they are taken. A unit of unknown build gets the steps of both, until it is open and known. */
const SHEET: readonly SheetStep[] = [
  step("as-found-slip", "slip", always),
  step("inspect", "inspect", always),
  step("needles-out", "count", apart),
  step("needles-in", "count", apart),
  step("spring-washers", "done", apart),
  step("plate-recess", "done", (it) => apart(it) && maybe("set-nut")(it)),
  step("screws", "done", apart),
  step("impeller", "done", apart),
  step("shims", "setting", maybe("shim-stack")),
  step("slip-before-lock", "setting", maybe("set-nut")),
  // It holds the set nut on either build; only on the set-nut unit it raises the slip.
  step("lock-nut", "done", always),
  step("final-slip", "slip", always),
  step("turn-by-hand", "done", always),
];

/** @example stepsFor({ work: "slip-check", unitFamily: "shim-stack" }).map(({ id }) => id)
 *   // ["as-found-slip", "inspect", "shims", "lock-nut", "final-slip", "turn-by-hand"] */
export const stepsFor = (it: SheetWork): readonly SheetStep[] => SHEET.filter(({ applies }) => applies(it));

/** The kind of entry that a step takes, whatever the unit. @example stepKind("needles-in") // "count" */
export function stepKind(id: SheetStepId): SheetStep["kind"] {
  const found = SHEET.find((step) => step.id === id);
  if (found === undefined) throw new Error(`No step is called ${id}`);
  return found.kind;
}

/** What can be judged with the unit closed (common practice, no published source). */
export const SEEN_FROM_OUTSIDE: readonly InspectedPart[] = ["drive-gear", "shaft", "seals", "housing", "impeller"];

/** The parts that the inspection asks for; every other may be noted all the same. */
export const partsToInspect = (it: SheetWork): readonly InspectedPart[] =>
  apart(it) ? INSPECTED_PARTS : SEEN_FROM_OUTSIDE;
