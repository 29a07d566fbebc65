import type { JobState } from "#shared/shop/job-state.ts";
import { anOwner, type Owner } from "#tests/speed/an-owner.ts";
import type { BareObject } from "#tests/speed/bare-object.ts";
import type { Chapter, FilledLedger } from "#tests/speed/filled-ledger.ts";
import { SPEED_SHOP, slotOf } from "#tests/speed/speed-shop.ts";

export { BareObject } from "#tests/speed/bare-object.ts";
export { FilledLedger } from "#tests/speed/filled-ledger.ts";

type Bindings = {
  readonly SHOP: DurableObjectNamespace<FilledLedger>;
  readonly BARE: DurableObjectNamespace<BareObject>;
};

/** What the benchmark asks of a shop, step by step; each answer is milliseconds, where anything was timed. */
export type Ask = { readonly shop: string } & (
  | { readonly step: "open" }
  | ({ readonly step: "fill" } & Chapter)
  | { readonly step: "rest" }
  | { readonly step: "age"; readonly from: JobState; readonly to: JobState }
  | { readonly step: "day-sheet"; readonly times: number; readonly jobs: number }
  | { readonly step: "meet"; readonly owners: number }
  | { readonly step: "hold" | "book" | "insert"; readonly concurrency: number }
);

/** The owners that a shop met last, and how many it has met: each asks for a slot of its own. */
type Met = { owners: readonly Owner[]; count: number };
const shops = new Map<string, Met>();

export default {
  async fetch(request, env) {
    const ask = (await request.json()) as Ask;
    const met = shops.get(ask.shop) ?? { owners: [], count: 0 };
    shops.set(ask.shop, met);
    const start = performance.now();
    await take(ask, met, env.SHOP.getByName(ask.shop), env.BARE.getByName(ask.shop));
    return Response.json(performance.now() - start);
  },
} satisfies ExportedHandler<Bindings>;

async function take(
  ask: Ask,
  met: Met,
  shop: DurableObjectStub<FilledLedger>,
  bare: DurableObjectStub<BareObject>,
): Promise<void> {
  switch (ask.step) {
    case "open":
      return must(shop.saveSettings({ ifVersion: 1, settings: SPEED_SHOP, staff: "Manager" }));
    case "fill":
      return shop.fill(ask);
    case "rest":
      while (!(await shop.isAtRest())) await scheduler.wait(50);
      return;
    case "age":
      return shop.age(ask);
    case "day-sheet":
      for (let time = 0; time < ask.times; time += 1) {
        const { length } = await shop.daySheet();
        if (length !== ask.jobs) throw new Error(`${length} jobs on the day sheet`);
      }
      return;
    case "meet":
      met.owners = Array.from({ length: ask.owners }, () => anOwner(slotOf(met.count++, Date.now()), Date.now()));
      return atOnce(met.owners, 8, ({ draft }) =>
        must(shop.keepAnswer({ tokenHash: draft, question: "unitFamily", answer: "set-nut" })),
      );
    case "hold":
      return atOnce(met.owners, ask.concurrency, ({ hold }) => must(shop.hold(hold)));
    case "book":
      return atOnce(met.owners, ask.concurrency, ({ booking }) => must(shop.book(booking)));
    case "insert":
      return atOnce(met.owners, ask.concurrency, ({ booking }) => must(bare.insert(booking)));
  }
}

/** So many calls under way at any time, each awaited: an answer comes when what it says is on disk. */
async function atOnce(
  owners: readonly Owner[],
  concurrency: number,
  call: (owner: Owner) => Promise<void>,
): Promise<void> {
  const waiting = owners.values();
  await Promise.all(
    Array.from({ length: concurrency }, async () => {
      for (const owner of waiting) await call(owner);
    }),
  );
}

async function must(answer: Promise<{ readonly ok: boolean }>): Promise<void> {
  const { ok, ...rest } = await answer;
  if (!ok) throw new Error(`It was refused: ${JSON.stringify(rest)}`);
}
