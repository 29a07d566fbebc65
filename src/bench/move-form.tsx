import { type ButtonMove, MOVE_WORDS } from "#shared/messages/shop-move-words.ts";
import type { JobState } from "#shared/shop/job-state.ts";

/** What is kept of a note; no reason that anybody will read again is longer. */
export const MOST_NOTE_CHARACTERS = 500;

type ButtonProps = {
  readonly number: string;
  /** As the page shows it: a job that was moved meanwhile is not moved again. */
  readonly state: JobState;
  readonly move: ButtonMove;
  readonly isQuiet?: boolean;
  /** Where to go on from; the job's page where it is not said. */
  readonly back?: "today";
};

/** A move that needs no word with it: one button. */
export const MoveButton = ({ number, state, move, isQuiet = false, back }: ButtonProps) => (
  <form method="post" action={`/shop/jobs/${number}/state`}>
    <input type="hidden" name="ifState" value={state} />
    {back !== undefined && <input type="hidden" name="back" value={back} />}
    <button type="submit" name="move" value={move} class={isQuiet ? "quiet" : undefined}>
      {MOVE_WORDS[move].button}
    </button>
  </form>
);

type NoteProps = { readonly id: string; readonly label: string; readonly typed: string };

export const NoteField = ({ id, label, typed }: NoteProps) => (
  <div class="field">
    <label for={id}>{label}</label>
    <textarea id={id} name="note" rows={2} maxlength={MOST_NOTE_CHARACTERS} required>
      {typed}
    </textarea>
  </div>
);
