import { asRatio, type Measured } from "#tests/speed/measured.ts";
import { median } from "#tests/speed/rounds.ts";
import type { SpeedRuntime } from "#tests/speed/speed-runtime.ts";
import { COMING } from "#tests/speed/speed-shop.ts";

const SIZES = [10_000, 100_000, 1_000_000] as const;
const CHAPTER = 50_000;
const BOOKINGS = 16;
const ROUNDS = 11;
const WARM_UP = 3;

/** One booking, hold and confirm, in shops with a short and with a very long history. */
export async function measureGrowth(runtime: SpeedRuntime): Promise<readonly Measured[]> {
  for (const size of SIZES) await fill(runtime, size);
  const rounds: number[][] = [];
  for (let round = 0; round < WARM_UP + ROUNDS; round += 1) {
    for (const size of SIZES) await runtime.ask({ shop: nameOf(size), step: "rest" });
    const timed: number[] = [];
    for (const size of SIZES) timed.push(await book(runtime, nameOf(size), BOOKINGS));
    if (round >= WARM_UP) rounds.push(timed);
  }
  const msOf = (index: number) => median(rounds.map((timed) => timed[index] ?? Number.NaN)) / BOOKINGS;
  return [
    asRatio(
      "growth: the time of a booking with 1,000,000 stored against 10,000",
      median(rounds.map(([few = Number.NaN, , many = Number.NaN]) => many / few)),
      { most: 1.5 },
    ),
    ...SIZES.map((size, index) => ({
      what: `  hold and confirm with ${size.toLocaleString("en-US")} bookings stored`,
      measured: `${msOf(index).toFixed(2)} ms`,
    })),
  ];
}

const nameOf = (size: number): string => `of-${size}`;

async function fill(runtime: SpeedRuntime, size: number): Promise<void> {
  const shop = nameOf(size);
  await runtime.ask({ shop, step: "open" });
  await book(runtime, shop, 1);
  for (let from = 0; from < size; from += CHAPTER) {
    await runtime.ask({ shop, step: "fill", from, to: Math.min(from + CHAPTER, size), past: size - COMING });
  }
}

/** Milliseconds for so many bookings, one after another. */
async function book({ ask }: SpeedRuntime, shop: string, owners: number): Promise<number> {
  await ask({ shop, step: "meet", owners });
  const hold = await ask({ shop, step: "hold", concurrency: 1 });
  return hold + (await ask({ shop, step: "book", concurrency: 1 }));
}
