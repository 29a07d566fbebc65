import { unreachable } from "#shared/basics/unreachable.ts";
import type { JobMoveName } from "#shared/job/job-moves.ts";
import type { MoveBlock, MoveRefusal, UndoRefusal } from "#shared/job/move-refusal.ts";
import { STEP_WORDS } from "#shared/messages/sheet-words.ts";
import { SHOP_JOB_STATE } from "#shared/messages/shop-words.ts";

type MoveWords = {
  readonly button: string;
  /** Said once, after it was done. */
  readonly done: string;
  /** What the note is asked for, where the move needs one. */
  readonly asks?: string;
};

/** The buttons that move a job along. */
export const MOVE_WORDS: Readonly<Record<Exclude<JobMoveName, "cancel" | "ask-owner" | "owner-answered">, MoveWords>> =
  {
    receive: { button: "Received", done: "Received." },
    start: { button: "Put it on the bench", done: "On the bench." },
    "await-part": {
      button: "Wait for a part",
      done: "Waiting for a part. The job keeps its bench time.",
      asks: "Which part, and when will it come?",
    },
    "part-came": { button: "The part has come", done: "The part has come. The job is back on the bench." },
    finish: { button: "It is set", done: "Set, ready to ship." },
    reopen: { button: "Open it again", done: "Opened again. The job is back on the bench." },
    ship: { button: "Shipped", done: "Shipped. What is left of its bench time is free." },
    "set-aside": {
      button: "Set it aside",
      done: "Set aside. What is left of its bench time is free.",
      asks: "Why is it set aside?",
    },
    "take-up": { button: "Take it up again", done: "Taken up again. The job is back on the bench." },
    return: {
      button: "Return it unrepaired",
      done: "Returned unrepaired. What is left of its bench time is free.",
      asks: "Why does it go back unrepaired?",
    },
    close: { button: "Close the job", done: "Closed. The job is off the day sheet." },
  };
export type ButtonMove = keyof typeof MOVE_WORDS;

export const isButtonMove = (move: string): move is ButtonMove => Object.hasOwn(MOVE_WORDS, move);

/** Around the buttons. */
export const MOVES = {
  since: (time: string) => `Since ${time}`,
  by: (name: string) => `by ${name}`,
  openSheet: "Open the bench sheet",
  receive: "Receive the unit",
  note: "Note",
  /** Opens the form of a move that asks why. */
  more: (button: string) => `${button} …`,
  noTime: "This job has no bench time: others have taken it.",
  tooLittleTime: "More work was agreed than the booked bench time holds.",
  timePassed: "Its bench time has passed.",
  findTime: "Find bench time",
  undo: (move: string) => `Take back the last move: ${move}`,
  undoAsks: "Why is it taken back?",
  undoHow: "The job goes back to where it was. Both moves stay in its history.",
  undoButton: "Take it back",
} as const;

/** Why a job was not moved, said above its buttons. */
export function moveRefusedText(refusal: MoveRefusal | UndoRefusal): string {
  switch (refusal.reason) {
    case "no-such-job":
      return "No job has that number.";
    case "changed-meanwhile":
      return `Somebody moved this job meanwhile. It is now: ${SHOP_JOB_STATE[refusal.state]}. Nothing was changed.`;
    case "not-allowed":
      return "That cannot be done from where the job stands. Nothing was changed.";
    case "note-needed":
      return "Write a line first: somebody will ask why.";
    case "not-ready":
      return blockText(refusal.block);
    case "nothing-to-undo":
      return "There is no move here that can be taken back.";
    default:
      return unreachable(refusal);
  }
}

const blockText = ({ steps }: MoveBlock): string =>
  `The bench sheet is not complete. Still open: ${steps.map((step) => STEP_WORDS[step].title).join(", ")}.`;
