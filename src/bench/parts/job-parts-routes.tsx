import { type Context, Hono } from "hono";
import type { Outcome } from "#shared/basics/outcome.ts";
import { JOB_PARTS } from "#shared/messages/stock-words.ts";
import { shelfOf } from "#shared/shop/shelf.ts";
import type { Balance } from "#shared/shop/stock-book.ts";
import type { JobPartRefusal, UseWish } from "#shared/shop/stock-wish.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import type { JobEnv } from "#src/bench/job-env.tsx";
import { readCount } from "#src/bench/parts/read-count.ts";
import { ShopPage } from "#src/bench/shop-page.tsx";
import { readForm } from "#src/http/read-form.ts";

const MOST_AT_ONCE = 20;

/** Parts of a job: used, taken back, laid out besides, put away. */
export function jobPartsRoutes({ shop, newId }: BenchNeeds) {
  return new Hono<JobEnv>()
    .post("/:number/parts/use", async (c) => {
      const wish = await useWishIn(c, newId);
      if (wish === null) return refused(c, "not-accepted", 422);
      const used = await shop.usePart(wish);
      return after(c, used, used.ok && used.value.countAgain ? "part-short" : "part-used");
    })
    .post("/:number/parts/take-back", async (c) => {
      const wish = await useWishIn(c, newId);
      return wish === null ? refused(c, "not-accepted", 422) : after(c, await shop.takePartBack(wish), "part-back");
    })
    .post("/:number/parts/add", async (c) => layOut(c, 1, "part-added"))
    .post("/:number/parts/put-away", async (c) => layOut(c, -1, "part-put-away"));

  async function layOut(c: Context<JobEnv>, sign: 1 | -1, done: string): Promise<Response> {
    const { wish, shelf = "", count: typed } = await readForm(c);
    const count = readCount(typed, 1, MOST_AT_ONCE);
    if (count === null) return refused(c, "not-accepted", 422);
    const [part = ""] = shelf.split("/");
    const { number } = c.var.job;
    const asked = { number, part, change: sign * count, staff: c.var.staff.name, key: wish || newId() };
    return after(c, await shop.layOutPart(asked), done);
  }
}

/** What the form wishes, or null where it names no shelf or no count. */
async function useWishIn(c: Context<JobEnv>, newId: () => string): Promise<UseWish | null> {
  const { wish, shelf: named = "", count: typed } = await readForm(c);
  const [part = "", family = ""] = named.split("/");
  const shelf = shelfOf({ part, family });
  const count = readCount(typed, 1, MOST_AT_ONCE);
  if (shelf === undefined || count === null) return null;
  const { number } = c.var.job;
  return {
    number,
    shelf: { part: shelf.part, family: shelf.family },
    count,
    staff: c.var.staff.name,
    key: wish || newId(),
  };
}

const after = (c: Context<JobEnv>, outcome: Outcome<Balance | unknown, JobPartRefusal>, done: string) =>
  outcome.ok
    ? c.redirect(`/shop/jobs/${c.var.job.number}?done=${done}#parts`, 303)
    : refused(c, outcome.refusal.reason, 409);

const refused = (c: Context<JobEnv>, reason: keyof typeof JOB_PARTS.refused, status: 409 | 422) =>
  c.html(
    <ShopPage title={JOB_PARTS.refusedTitle} front={c.var.front}>
      <p class="problem" role="alert">
        {JOB_PARTS.refused[reason]}
      </p>
      <p>
        <a href={`/shop/jobs/${c.var.job.number}#parts`}>{JOB_PARTS.back(c.var.job.number)}</a>
      </p>
    </ShopPage>,
    status,
  );
