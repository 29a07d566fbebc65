import type { JobMoveName } from "#shared/job/job-moves.ts";
import type { SheetStepId } from "#shared/job/sheet-entry.ts";
import type { JobState } from "#shared/shop/job-state.ts";

/** What must be done before a move that the table would allow. */
export type MoveBlock = { readonly what: "sheet-not-complete"; readonly steps: readonly SheetStepId[] };

/** Why a job was not moved. */
export type MoveRefusal =
  | { readonly reason: "no-such-job" }
  | { readonly reason: "changed-meanwhile"; readonly state: JobState }
  | { readonly reason: "not-allowed"; readonly allowed: readonly JobMoveName[] }
  | { readonly reason: "note-needed" }
  | { readonly reason: "not-ready"; readonly block: MoveBlock };

/** Why the last move was not taken back. */
export type UndoRefusal =
  | Extract<MoveRefusal, { readonly reason: "no-such-job" | "changed-meanwhile" | "note-needed" }>
  /** Nothing was moved yet, the newest move followed from an answer, or the question it left is not open any more. */
  | { readonly reason: "nothing-to-undo" };
