import { runInDurableObject } from "cloudflare:test";
import * as fc from "fast-check";
import { expect, it } from "vitest";
import type { Answers } from "#shared/craft/vocabulary.ts";
import { buttonMovesFrom, type JobMoveName } from "#shared/job/job-moves.ts";
import { IN_THE_SHOP, type JobState, OVER } from "#shared/shop/job-state.ts";
import { SHELVES, type Shelf, sameShelf, shelvesFor } from "#shared/shop/shelf.ts";
import {
  aBooking,
  aLedger,
  type LedgerStub,
  MINUTE,
  MONDAY,
  rebuildAnswers,
  setClock,
  someAnswers,
} from "#tests/ledger/a-ledger.ts";
import { untilMet } from "#tests/support/until-met.ts";

/** A job as somebody keeps it on paper: what it was to take and what it took, one line a part. */
type PaperJob = {
  readonly number: string;
  readonly booking: string;
  readonly answers: Answers;
  readonly wanted: Map<string, number>;
  /** What lies in the unit, by shelf. */
  readonly took: Map<string, number>;
  state: JobState;
  /** The states it left since it was last set, oldest first. */
  before: JobState[];
};
/** A drawer for each shelf, with what is really in it as far as anybody knows. */
type Paper = {
  now: number;
  readonly jobs: PaperJob[];
  readonly drawers: Map<string, { count: number; doubted: boolean }>;
};
type Real = { readonly ledger: LedgerStub };
type Command = fc.AsyncCommand<Paper, Real>;

const key = ({ part, family }: Shelf) => `${part} ${family}`;
const seen = new Set<string>();
let made = 0;
const fresh = () => `wish-${made++}`;
const plus = (counts: Map<string, number>, name: string, by: number) => counts.set(name, (counts.get(name) ?? 0) + by);

/** Reserved on paper: gone through job by job, for each shelf. */
function reservedOnPaper({ jobs }: Paper, shelf: Shelf): number {
  if (["thread-locker", "shim-washers"].includes(shelf.part)) return 0;
  let sum = 0;
  for (const { state, answers, wanted, took } of jobs) {
    if (["cancelled", "set", "shipped", "returned-unrepaired", "closed"].includes(state)) continue;
    if (answers.unitFamily !== "unknown" && answers.unitFamily !== shelf.family) continue;
    let taken = 0;
    for (const [where, count] of took) if (where.split(" ")[0] === shelf.part) taken += count;
    sum += Math.max(0, (wanted.get(shelf.part) ?? 0) - taken);
  }
  return sum;
}

/** What the ledger says is what stands on paper, and its newest entries say the sum of all of them. */
async function agree({ ledger }: Real, paper: Paper) {
  for (const line of await ledger.stock()) {
    const drawer = paper.drawers.get(key(line)) ?? { count: 0, doubted: false };
    const reserved = reservedOnPaper(paper, line);
    const { onHand, countAgain, free } = line;
    expect({ shelf: key(line), onHand, countAgain, reserved: line.reserved, free }).toEqual({
      shelf: key(line),
      onHand: drawer.count,
      countAgain: drawer.doubted,
      reserved,
      free: drawer.count - reserved,
    });
  }
  const sums = await runInDurableObject(ledger, (_, { storage }) =>
    storage.sql
      .exec<{ shelf: string; sum: number }>(
        "SELECT part || ' ' || family AS shelf, sum(change) AS sum FROM stock_entry GROUP BY part, family",
      )
      .toArray(),
  );
  for (const { shelf, sum } of sums) expect([shelf, sum]).toEqual([shelf, paper.drawers.get(shelf)?.count ?? 0]);
}

const command = (name: string, check: (paper: Paper) => boolean, run: Command["run"]): Command => ({
  check,
  run: async (paper, real) => {
    paper.now += MINUTE;
    await setClock(real.ledger, paper.now);
    await run(paper, real);
    await agree(real, paper);
  },
  toString: () => name,
});

/** Counted from the newest. */
const nth = fc.constantFrom(0, 0, 0, 1, 2);
const pick = <Item>(items: readonly Item[], index: number) => items.at(-1 - (index % items.length))!;
const hasJobs = ({ jobs }: Paper) => jobs.length > 0;
const shelf = fc.constantFrom(...SHELVES);
const count = fc.integer({ min: 1, max: 4 });

function put(paper: Paper, where: Shelf, by: number) {
  const drawer = paper.drawers.get(key(where)) ?? { count: 0, doubted: false };
  const after = drawer.count + by;
  paper.drawers.set(key(where), { count: after, doubted: drawer.doubted || after < 0 });
}

const book = fc.tuple(fc.constantFrom("set-nut", "shim-stack", "unknown"), fc.boolean()).map(([unitFamily, rebuild]) =>
  command(
    `book ${unitFamily} ${rebuild ? "rebuild" : "check"}`,
    ({ jobs }) => jobs.length < 6,
    async (paper, { ledger }) => {
      const answers = { ...(rebuild ? rebuildAnswers : someAnswers()), unitFamily } as Answers;
      const verdict = rebuild ? "full-rebuild" : "slip-check";
      const { booking, number } = await aBooking(ledger, { hold: { verdict, answers }, booking: { answers } });
      const job = await ledger.job(number);
      const wanted = new Map(job!.plan.parts.map((part) => [part.part, part.count]));
      paper.jobs.push({ number, booking, answers, wanted, took: new Map(), state: "booked", before: [] });
    },
  ),
);

const cancel = nth.map((index) =>
  command(`cancel ${index}`, hasJobs, async ({ jobs }, { ledger }) => {
    const job = pick(jobs, index);
    const cancelled = await ledger.cancelBooking({ booking: job.booking, linkHash: "", by: "shop" });
    if (job.state === "booked") job.state = "cancelled";
    expect(cancelled.ok).toBe(job.state === "cancelled");
    seen.add(`cancel ${cancelled.ok}`);
  }),
);

const move = fc.tuple(nth, fc.nat(20)).map(([index, which]) =>
  command(
    `move ${index} ${which}`,
    ({ jobs }) => jobs.some(({ state }) => buttonMovesFrom(state).length > 0),
    async ({ jobs }, { ledger }) => {
      const job = pick(
        jobs.filter(({ state }) => buttonMovesFrom(state).length > 0),
        index,
      );
      const moves = buttonMovesFrom(job.state).filter((name) => name !== "finish");
      if (moves.length === 0) return;
      const name = pick(moves, which) as JobMoveName;
      const wish = { number: job.number, move: name, staff: "Ines", note: fresh(), ifState: job.state };
      const moved = await ledger.moveJob(wish);
      if (!moved.ok) throw new Error(`${name} was refused: ${JSON.stringify(moved.refusal)}`);
      seen.add(`move ${name}`);
      job.before.push(job.state);
      job.state = moved.value.state;
    },
  ),
);

/** Never past a setting: that one is made here without its sheet, and so without a line in the history. */
const undoable = ({ before }: PaperJob) => before.length > 0;

const undo = nth.map((index) =>
  command(
    `undo a move of ${index}`,
    ({ jobs }) => jobs.some(undoable),
    async ({ jobs }, { ledger }) => {
      const job = pick(jobs.filter(undoable), index);
      const wish = { number: job.number, staff: "Ines", note: fresh(), ifState: job.state };
      const undone = await ledger.undoMove(wish);
      if (!undone.ok) throw new Error(`Not undone: ${JSON.stringify(undone.refusal)}`);
      const over = ["shipped", "returned-unrepaired", "closed"].includes(job.state);
      job.state = job.before.pop()!;
      expect(undone.value.state).toBe(job.state);
      seen.add(over ? "undo an end" : "undo a move");
    },
  ),
);

/** A bench sheet is no business of the shelves: the unit is set without one here. */
const finish = nth.map((index) =>
  command(
    `finish ${index}`,
    ({ jobs }) => jobs.some(({ state }) => state === "on-bench"),
    async ({ jobs }, { ledger }) => {
      const job = pick(
        jobs.filter(({ state }) => state === "on-bench"),
        index,
      );
      await runInDurableObject(ledger, (_, { storage }) =>
        storage.sql.exec(
          "UPDATE job SET state = 'set' WHERE serial = (SELECT job FROM booking WHERE id = ?)",
          job.booking,
        ),
      );
      job.state = "set";
      job.before = [];
      seen.add("move finish");
    },
  ),
);

const take = fc.tuple(nth, fc.nat(40), count, fc.boolean()).map(([index, which, many, twice]) =>
  command(`use ${index} ${which} x${many}`, hasJobs, async (paper, { ledger }) => {
    const job = pick(paper.jobs, index);
    const from = pick(
      SHELVES.filter(({ part }) => shelvesFor(part, job.answers.unitFamily).some((it) => it.part === part)),
      which,
    );
    const mine = shelvesFor(from.part, job.answers.unitFamily).some((it) => sameShelf(it, from));
    const wish = { number: job.number, shelf: from, count: many, staff: "Ines", key: fresh() };
    const used = await ledger.usePart(wish);
    if (twice) expect(await ledger.usePart(wish)).toEqual(used);
    const expected = !mine ? "no-such-shelf" : IN_THE_SHOP.includes(job.state) ? "used" : "not-now";
    expect(used.ok ? "used" : used.refusal.reason).toBe(expected);
    seen.add(`use ${expected}`);
    if (!used.ok) return;
    plus(job.took, key(from), many);
    put(paper, from, -many);
    if (used.value.onHand < 0) seen.add("use more than the book knew");
  }),
);

const takeBack = fc.tuple(nth, fc.nat(40), count, fc.boolean()).map(([index, which, many, twice]) =>
  command(
    `take back ${index} ${which} x${many}`,
    ({ jobs }) => jobs.some(({ took }) => took.size > 0),
    async (paper, { ledger }) => {
      const job = pick(
        paper.jobs.filter(({ took }) => took.size > 0),
        index,
      );
      const [where, had] = pick([...job.took], which);
      const from = SHELVES.find((it) => key(it) === where)!;
      const wish = { number: job.number, shelf: from, count: many, staff: "Ines", key: fresh() };
      const back = await ledger.takePartBack(wish);
      if (twice) expect(await ledger.takePartBack(wish)).toEqual(back);
      const expected = !IN_THE_SHOP.includes(job.state) ? "not-now" : many > had ? "not-so-many" : "back";
      expect(back.ok ? "back" : back.refusal.reason).toBe(expected);
      seen.add(`take back ${expected}`);
      if (!back.ok) return;
      plus(job.took, where, -many);
      put(paper, from, many);
    },
  ),
);

const layOut = fc.tuple(nth, shelf, fc.constantFrom(-2, -1, 1, 2)).map(([index, { part }, change]) =>
  command(`lay out ${index} ${part} ${change}`, hasJobs, async ({ jobs }, { ledger }) => {
    const job = pick(jobs, index);
    let taken = 0;
    for (const [where, many] of job.took) if (where.split(" ")[0] === part) taken += many;
    const left = Math.max(0, (job.wanted.get(part) ?? 0) - taken);
    const fits = shelvesFor(part, job.answers.unitFamily).length > 0;
    const closed = ["set", "shipped", "returned-unrepaired", ...OVER].includes(job.state);
    const expected = !fits ? "no-such-shelf" : closed ? "not-now" : change < -left ? "not-so-many" : "laid out";
    const laid = await ledger.layOutPart({ number: job.number, part, change, staff: "Ines", key: fresh() });
    expect(laid.ok ? "laid out" : laid.refusal.reason).toBe(expected);
    seen.add(`lay out ${expected}`);
    if (laid.ok) plus(job.wanted, part, change);
  }),
);

const receive = fc.tuple(shelf, count, fc.boolean()).map(([where, many, twice]) =>
  command(
    `receive ${key(where)} x${many}`,
    () => true,
    async (paper, { ledger }) => {
      const wish = { shelf: where, count: many, staff: "Ines", note: null, key: fresh() };
      const received = await ledger.receiveParts(wish);
      if (twice) expect(await ledger.receiveParts(wish)).toEqual(received);
      put(paper, where, many);
    },
  ),
);

const countShelf = fc.tuple(fc.nat(40), fc.nat(6)).map(([which, found]) =>
  command(
    `count ${which}: ${found}`,
    ({ drawers }) => drawers.size > 0,
    async (paper, { ledger }) => {
      const [where, drawer] = pick([...paper.drawers], which);
      const counted = SHELVES.find((it) => key(it) === where)!;
      const wish = { shelf: counted, found, staff: "Ines", note: "counted", key: fresh() };
      expect(await ledger.countParts(wish)).toEqual({ ok: true, value: { onHand: found, countAgain: false } });
      if (drawer.doubted) seen.add("count settles a doubt");
      paper.drawers.set(where, { count: found, doubted: false });
    },
  ),
);

it("keeps parts as somebody would with a drawer for each and a sheet of paper for each job", {
  timeout: 240_000,
}, async () => {
  const commands = fc.commands(
    [
      book,
      book,
      cancel,
      move,
      move,
      move,
      undo,
      finish,
      take,
      take,
      take,
      takeBack,
      takeBack,
      layOut,
      receive,
      countShelf,
    ],
    { maxCommands: 60, size: "max" },
  );
  const law = fc.asyncProperty(commands, async (steps) => {
    const ledger = await aLedger({ now: MONDAY });
    const setup = () => ({ model: { now: MONDAY, jobs: [], drawers: new Map() }, real: { ledger } });
    await fc.asyncModelRun<Paper, Real, false, Paper>(setup, steps);
  });
  const mustMeet = [
    "cancel true",
    "move receive",
    "move return",
    "move finish",
    "undo a move",
    "undo an end",
    "use used",
    "use not-now",
    "use more than the book knew",
    "take back back",
    "take back not-so-many",
    "lay out laid out",
    "lay out not-so-many",
    "lay out not-now",
    "count settles a doubt",
  ];
  await untilMet({ seen, mustMeet }, (seed) => fc.assert(law, { numRuns: 60, seed }));
});
