import type { DayGroup, DayJob } from "#shared/job/day-sheet.ts";
import { NEXT_PAGE } from "#shared/messages/shop-day-words.ts";
import { MOVES } from "#shared/messages/shop-move-words.ts";
import { BENCH_TO_COME } from "#shared/shop/job-state.ts";
import { MoveButton } from "#src/bench/move-form.tsx";

type NextProps = { readonly job: DayJob; readonly group: DayGroup };

/** The one thing that comes next for a job: a page to open, or a move to make right here. */
export function NextStep({ job, group }: NextProps) {
  const { number, state } = job;
  const move = (name: "start" | "part-came" | "take-up" | "close") => (
    <MoveButton number={number} state={state} move={name} back="today" />
  );
  if (needsTime(job)) return <Open href={`/shop/jobs/${number}/move`} words={MOVES.findTime} />;
  switch (group) {
    case "late":
    case "arriving":
      return <Open href={`/shop/receive/${number}`} words={NEXT_PAGE.receive} />;
    case "received":
      return move("start");
    case "on-bench":
      return <Open href={`/shop/jobs/${number}/sheet`} words={NEXT_PAGE.openSheet} />;
    case "owner-to-decide":
      return <Open href={`/shop/jobs/${number}/approval`} words={NEXT_PAGE.question} />;
    case "part-to-come":
      return move("part-came");
    case "set":
      return <Open href={`/shop/jobs/${number}`} words={NEXT_PAGE.ship} />;
    case "set-aside":
      return move("take-up");
    case "to-close":
      return move("close");
  }
}

/** Received or agreed, but without the bench time for it. */
const needsTime = ({ state, keepsTime, needsBenchTime }: DayJob): boolean =>
  BENCH_TO_COME.includes(state) && (!keepsTime || needsBenchTime);

const Open = ({ href, words }: { readonly href: string; readonly words: string }) => (
  <a class="button" href={href}>
    {words}
  </a>
);
