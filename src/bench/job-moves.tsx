import { buttonMovesFrom, madeByButton, NOTE_NEEDED } from "#shared/job/job-moves.ts";
import { lastStanding } from "#shared/job/standing-move.ts";
import { JOB } from "#shared/messages/shop-job-words.ts";
import { type ButtonMove, isButtonMove, MOVE_WORDS, MOVES } from "#shared/messages/shop-move-words.ts";
import { SHOP_JOB_STATE } from "#shared/messages/shop-words.ts";
import { timeText } from "#shared/messages/time-words.ts";
import type { Job, JobEvent } from "#shared/shop/booking.ts";
import { BENCH_TO_COME } from "#shared/shop/job-state.ts";
import { MoveButton, NoteField } from "#src/bench/move-form.tsx";

/** A move that was asked for and refused: why, and what was typed with it. */
export type RefusedMove = {
  readonly move: ButtonMove | "undo" | null;
  readonly problem: string;
  readonly note: string;
};

type MovesProps = {
  readonly job: Job;
  readonly locale: string;
  /** Epoch milliseconds. */
  readonly now: number;
  readonly refused?: RefusedMove | undefined;
};

/** Where the job stands, what may be done with it from there, and taking back what was done last. */
export function JobMoves({ job, locale, now, refused }: MovesProps) {
  const last = lastMove(job);
  const moves = buttonMovesFrom(job.state).filter(isButtonMove);
  return (
    <section class="standing" aria-labelledby="standing">
      <h2 id="standing">
        {JOB.state}: {SHOP_JOB_STATE[job.state]}
      </h2>
      {last !== null && <Since last={last} zone={job.booking.time.zone} locale={locale} />}
      {refused !== undefined && (
        <p class="problem" role="alert">
          {refused.problem}
        </p>
      )}
      <BenchTimeNotice job={job} now={now} />
      <div class="actions screen">
        {job.state === "on-bench" && (
          <a class="button" href={`/shop/jobs/${job.number}/sheet`}>
            {MOVES.openSheet}
          </a>
        )}
        {moves
          .filter((move) => !NOTE_NEEDED.includes(move))
          .map((move, place) => (
            <PlainMove job={job} move={move} isQuiet={place > 0 || job.state === "on-bench"} />
          ))}
      </div>
      {moves
        .filter((move) => NOTE_NEEDED.includes(move))
        .map((move) => (
          <NotedMove job={job} move={move} refused={refused} />
        ))}
      {last !== null && madeByButton(last.what) && isButtonMove(last.what) && (
        <Undo job={job} last={last.what} refused={refused} />
      )}
    </section>
  );
}

/** The newest move that still stands. Only moves and undoings change the state; all else that happened is passed over. */
const lastMove = ({ history }: Job): JobEvent | null =>
  lastStanding(history.filter(({ what }) => what === "undone" || MOVE_NAMES.has(what)));

const MOVE_NAMES: ReadonlySet<string> = new Set([...Object.keys(MOVE_WORDS), "ask-owner", "owner-answered"]);

const Since = ({ last, zone, locale }: { readonly last: JobEvent; readonly zone: string; readonly locale: string }) => (
  <p>
    {MOVES.since(timeText(last.at, zone, locale))}
    {last.staff !== null && `, ${MOVES.by(last.staff)}`}
    {last.note !== null && `: ${last.note}`}
  </p>
);

/** A job that needs a bench and has no time for it gets the way to some. */
function BenchTimeNotice({ job, now }: { readonly job: Job; readonly now: number }) {
  const problem = benchTimeProblem(job, now);
  if (problem === null) return null;
  return (
    <div class="notice">
      <p>{problem}</p>
      <p>
        <a class="button quiet screen" href={`/shop/jobs/${job.number}/move`}>
          {MOVES.findTime}
        </a>
      </p>
    </div>
  );
}

function benchTimeProblem({ state, booking, needsBenchTime }: Job, now: number): string | null {
  if (!BENCH_TO_COME.includes(state)) return null;
  if (!booking.keepsTime) return MOVES.noTime;
  if (needsBenchTime) return MOVES.tooLittleTime;
  return booking.time.endsAt <= now ? MOVES.timePassed : null;
}

type MoveProps = { readonly job: Job; readonly move: ButtonMove };

function PlainMove({ job, move, isQuiet }: MoveProps & { readonly isQuiet: boolean }) {
  if (move !== "receive") return <MoveButton number={job.number} state={job.state} move={move} isQuiet={isQuiet} />;
  return (
    <a class="button" href={`/shop/receive/${job.number}`}>
      {MOVES.receive}
    </a>
  );
}

type Refusable = { readonly refused: RefusedMove | undefined };

const NotedMove = ({ job, move, refused }: MoveProps & Refusable) => (
  <details class="screen" open={refused?.move === move}>
    <summary>{MOVES.more(MOVE_WORDS[move].button)}</summary>
    <form method="post" action={`/shop/jobs/${job.number}/state`}>
      <input type="hidden" name="ifState" value={job.state} />
      <NoteField
        id={`note-${move}`}
        label={MOVE_WORDS[move].asks ?? MOVES.note}
        typed={refused?.move === move ? refused.note : ""}
      />
      <button type="submit" name="move" value={move}>
        {MOVE_WORDS[move].button}
      </button>
    </form>
  </details>
);

const Undo = ({ job, last, refused }: { readonly job: Job; readonly last: ButtonMove } & Refusable) => (
  <details class="screen" open={refused?.move === "undo"}>
    <summary>{MOVES.undo(MOVE_WORDS[last].button)}</summary>
    <form method="post" action={`/shop/jobs/${job.number}/undo`}>
      <input type="hidden" name="ifState" value={job.state} />
      <p>{MOVES.undoHow}</p>
      <NoteField id="note-undo" label={MOVES.undoAsks} typed={refused?.move === "undo" ? refused.note : ""} />
      <button type="submit" class="quiet">
        {MOVES.undoButton}
      </button>
    </form>
  </details>
);
