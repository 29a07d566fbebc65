import type { JobState } from "#shared/shop/job-state.ts";

/** One step in a job's life: from which states it may be taken, and where it leads. */
export type JobMove = {
  readonly move: JobMoveName;
  readonly from: readonly JobState[];
  readonly to: JobState;
  /** Made by what it names (an approval, an answer, the booking), never by a button of its own. */
  readonly madeBy?: "approval" | "booking";
};

export const JOB_MOVE_NAMES = [
  "receive",
  "cancel",
  "start",
  "ask-owner",
  "owner-answered",
  "await-part",
  "part-came",
  "finish",
  "reopen",
  "ship",
  "set-aside",
  "take-up",
  "return",
  "close",
] as const;
export type JobMoveName = (typeof JOB_MOVE_NAMES)[number];

/** Every move that a job may make; what is not here is refused. */
const JOB_MOVES: readonly JobMove[] = [
  { move: "receive", from: ["booked"], to: "received" },
  { move: "cancel", from: ["booked"], to: "cancelled", madeBy: "booking" },
  { move: "start", from: ["received"], to: "on-bench" },
  { move: "ask-owner", from: ["on-bench"], to: "owner-to-decide", madeBy: "approval" },
  { move: "owner-answered", from: ["owner-to-decide"], to: "on-bench", madeBy: "approval" },
  { move: "await-part", from: ["on-bench"], to: "part-to-come" },
  { move: "part-came", from: ["part-to-come"], to: "on-bench" },
  { move: "finish", from: ["on-bench"], to: "set" },
  { move: "reopen", from: ["set"], to: "on-bench" },
  { move: "ship", from: ["set"], to: "shipped" },
  { move: "set-aside", from: ["received", "on-bench", "owner-to-decide", "part-to-come"], to: "set-aside" },
  { move: "take-up", from: ["set-aside"], to: "on-bench" },
  {
    move: "return",
    from: ["received", "on-bench", "owner-to-decide", "part-to-come", "set-aside"],
    to: "returned-unrepaired",
  },
  { move: "close", from: ["shipped", "returned-unrepaired"], to: "closed" },
];

/** The moves that a job in this state may make. */
const movesFrom = (state: JobState): readonly JobMove[] => JOB_MOVES.filter(({ from }) => from.includes(state));

/** Where a move leads from this state, or null where it may not be made. @example stateAfter("booked", "receive") // "received" */
export const stateAfter = (state: JobState, move: JobMoveName): JobState | null =>
  movesFrom(state).find((it) => it.move === move)?.to ?? null;

/** The moves that a button makes from this state. */
export const buttonMovesFrom = (state: JobState): readonly JobMoveName[] =>
  movesFrom(state)
    .filter(({ madeBy }) => madeBy === undefined)
    .map(({ move }) => move);

/** Was this move made by a button? Only such a one is taken back by a button. */
export const madeByButton = (what: string): boolean =>
  JOB_MOVES.some(({ move, madeBy }) => move === what && madeBy === undefined);

/** Moves that somebody will ask about later: they are made with a note that says why. */
export const NOTE_NEEDED: readonly JobMoveName[] = ["set-aside", "return", "await-part"];
