import { asRatio, type Measured } from "#tests/speed/measured.ts";
import { median } from "#tests/speed/rounds.ts";
import type { SpeedRuntime } from "#tests/speed/speed-runtime.ts";

const CALLS = 48;
const ROUNDS = 11;
const WARM_UP = 3;

/** One confirm transaction against one bare one-row insert, both called the same way and both on disk when answered. */
export async function measureConfirm(runtime: SpeedRuntime): Promise<readonly Measured[]> {
  await runtime.ask({ shop: "race", step: "open" });
  return [...(await measureAt(runtime, 8)), ...(await measureAt(runtime, 32))];
}

async function measureAt({ ask }: SpeedRuntime, concurrency: number): Promise<readonly Measured[]> {
  const rounds: { hold: number; insert: number; book: number }[] = [];
  for (let round = 0; round < WARM_UP + ROUNDS; round += 1) {
    const timed = (step: "hold" | "book" | "insert") => ask({ shop: "race", step, concurrency });
    await ask({ shop: "race", step: "meet", owners: CALLS });
    const hold = await timed("hold");
    // What a booking has told to everybody comes after it, and would be told in somebody else's time.
    await ask({ shop: "race", step: "rest" });
    const insert = await timed("insert");
    const book = await timed("book");
    if (round >= WARM_UP) rounds.push({ hold, insert, book });
  }
  const each = (ms: number) => `${(ms / CALLS).toFixed(2)} ms`;
  return [
    asRatio(
      `confirm: confirms/s against bare one-row inserts/s, ${concurrency} at once`,
      median(rounds.map(({ insert, book }) => insert / book)),
      { least: 0.6 },
    ),
    { what: "  one confirm", measured: each(median(rounds.map(({ book }) => book))) },
    { what: "  one bare insert", measured: each(median(rounds.map(({ insert }) => insert))) },
    { what: "  one hold, which comes before", measured: each(median(rounds.map(({ hold }) => hold))) },
  ];
}
