import { type Context, Hono } from "hono";
import { JOB_MOVE_NAMES } from "#shared/job/job-moves.ts";
import type { MoveRefusal, UndoRefusal } from "#shared/job/move-refusal.ts";
import { isButtonMove, moveRefusedText } from "#shared/messages/shop-move-words.ts";
import { JOB_STATES, type JobState } from "#shared/shop/job-state.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import type { JobEnv } from "#src/bench/job-env.tsx";
import type { RefusedMove } from "#src/bench/job-moves.tsx";
import { MOST_NOTE_CHARACTERS } from "#src/bench/move-form.tsx";
import type { StaffVariables } from "#src/bench/session.ts";
import { readForm } from "#src/http/read-form.ts";

type StateEnv = JobEnv & { Variables: StaffVariables };
/** The job's page once more, with what was refused. */
type ShowJob = (c: Context<StateEnv>, refused: RefusedMove) => Promise<Response>;

/** Moving a job along, and taking back the last move. What was refused is shown on the job as it is by now. */
export function stateRoutes(needs: BenchNeeds, showJob: ShowJob) {
  return new Hono<StateEnv>()
    .post("/:number/state", async (c) => {
      const { number } = c.var.job;
      const form = await readForm(c);
      const move = JOB_MOVE_NAMES.find((known) => known === form["move"]);
      const ifState = stateIn(form);
      const note = noteIn(form);
      if (move === undefined || ifState === undefined)
        return refuse(c, { reason: "not-allowed", allowed: [] }, null, note);
      const moved = await needs.shop.moveJob({ number, move, staff: c.var.staff.name, note, ifState });
      if (!moved.ok) return refuse(c, moved.refusal, isButtonMove(move) ? move : null, note);
      const isFromToday = form["back"] === "today";
      return c.redirect(isFromToday ? `/shop?job=${number}&done=${move}` : `/shop/jobs/${number}?done=${move}`, 303);
    })
    .post("/:number/undo", async (c) => {
      const { number } = c.var.job;
      const form = await readForm(c);
      const note = noteIn(form);
      const ifState = stateIn(form);
      if (ifState === undefined) return refuse(c, { reason: "nothing-to-undo" }, "undo", note);
      const undone = await needs.shop.undoMove({ number, staff: c.var.staff.name, note, ifState });
      if (!undone.ok) return refuse(c, undone.refusal, "undo", note);
      return c.redirect(`/shop/jobs/${number}?done=undone`, 303);
    });

  async function refuse(
    c: Context<StateEnv>,
    refusal: MoveRefusal | UndoRefusal,
    move: RefusedMove["move"],
    note: string,
  ): Promise<Response> {
    const job = await needs.shop.job(c.var.job.number);
    if (job !== null) c.set("job", job);
    c.status(refusal.reason === "note-needed" ? 422 : 409);
    return showJob(c, { move, problem: moveRefusedText(refusal), note });
  }
}

type Form = Readonly<Record<string, string>>;

const stateIn = (form: Form): JobState | undefined => JOB_STATES.find((known) => known === form["ifState"]);
const noteIn = (form: Form): string => (form["note"] ?? "").slice(0, MOST_NOTE_CHARACTERS);
