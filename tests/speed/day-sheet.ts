import { asRatio, type Measured } from "#tests/speed/measured.ts";
import { median } from "#tests/speed/rounds.ts";
import type { SpeedRuntime } from "#tests/speed/speed-runtime.ts";

const CLOSED = 100_000;
const CHAPTER = 50_000;
/** As many as a busy shop has in hand at a time. */
const IN_HAND = 12;
const SHEETS = 60;
const ROUNDS = 15;
const WARM_UP = 5;

/** The day sheet of a shop with a long history against that of a new one, with nothing and with as much in hand. */
export async function measureDaySheet(runtime: SpeedRuntime): Promise<readonly Measured[]> {
  await open(runtime, "new");
  await open(runtime, "old");
  for (let from = 0; from < CLOSED; from += CHAPTER) {
    await runtime.ask({ shop: "old", step: "fill", from, to: from + CHAPTER, past: CLOSED });
  }
  const empty = await race(runtime, 0);
  for (const shop of ["new", "old"]) {
    await book(runtime, shop, IN_HAND);
    await runtime.ask({ shop, step: "age", from: "booked", to: "received" });
  }
  return [...empty, ...(await race(runtime, IN_HAND))];
}

async function race({ ask }: SpeedRuntime, jobs: number): Promise<readonly Measured[]> {
  for (const shop of ["new", "old"]) await ask({ shop, step: "rest" });
  const rounds: { few: number; many: number }[] = [];
  for (let round = 0; round < WARM_UP + ROUNDS; round += 1) {
    const timed = (shop: string) => ask({ shop, step: "day-sheet", times: SHEETS, jobs });
    const few = await timed("new");
    const many = await timed("old");
    if (round >= WARM_UP) rounds.push({ few, many });
  }
  const each = median(rounds.map(({ many }) => many)) / SHEETS;
  return [
    asRatio(
      `day sheet: ${jobs} jobs in hand and ${CLOSED.toLocaleString("en-US")} closed against none closed`,
      median(rounds.map(({ few, many }) => many / few)),
      { most: 1.5 },
    ),
    { what: "  one day sheet with the closed ones", measured: `${each.toFixed(2)} ms` },
  ];
}

/** A shop whose one job so far is closed. */
async function open(runtime: SpeedRuntime, shop: string): Promise<void> {
  await runtime.ask({ shop, step: "open" });
  await book(runtime, shop, 1);
  await runtime.ask({ shop, step: "age", from: "booked", to: "closed" });
}

async function book({ ask }: SpeedRuntime, shop: string, owners: number): Promise<void> {
  await ask({ shop, step: "meet", owners });
  for (const step of ["hold", "book"] as const) await ask({ shop, step, concurrency: 1 });
}
