import type { MoveBlock } from "#shared/job/move-refusal.ts";
import type { StoredJob } from "#src/ledger/job-rows.ts";
import type { Turn } from "#src/ledger/turn.ts";

/** Who made a move, and what was said with it. */
export type MoveMaker = { readonly staff: string | null; readonly note: string | null };

/** What a move asks for or brings about besides the new state. The job is given as it is before the move. */
export type MoveRule = {
  /** What must be done first; null = nothing. */
  readonly guard?: (turn: Turn, before: StoredJob) => MoveBlock | null;
  /** Written in the same transaction, after the new state and its line in the history. */
  readonly effect?: (turn: Turn, before: StoredJob, maker: MoveMaker) => void;
  /** Written when the move is taken back, so that its effect does not outlive it. */
  readonly undone?: (turn: Turn, before: StoredJob, maker: MoveMaker) => void;
};
