import { Hono } from "hono";
import { CHAIN, RISE } from "#shared/messages/shop-record-words.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import type { StaffVariables } from "#src/bench/session.ts";
import { ShopPage } from "#src/bench/shop-page.tsx";

/** The shop's whole chain of records: how it stands, the file of it, and how to check that by hand. */
export function chainRoutes({ shop }: BenchNeeds) {
  return new Hono<{ Variables: StaffVariables }>()
    .get("/records", async (c) => {
      const [{ entries, brokenAt, hash }, { settings }] = await Promise.all([shop.chainStanding(), shop.settings()]);
      return c.html(
        <ShopPage title={CHAIN.title} front={settings.front}>
          {brokenAt === null ? (
            <p>{CHAIN.whole(entries)}</p>
          ) : (
            <p class="problem" role="alert">
              {CHAIN.broken(brokenAt)}
            </p>
          )}
          {entries > 0 && (
            <p>
              {CHAIN.newest}: <code class="code">{hash}</code>
            </p>
          )}
          <p class="actions">
            {entries > 0 && (
              <a class="button" href="/shop/records.jsonl">
                {CHAIN.download}
              </a>
            )}
            <a class="button quiet" href="/shop/rise">
              {RISE.title}
            </a>
          </p>
          <h2>{CHAIN.checkTitle}</h2>
          <ul>
            {CHAIN.check.map((line) => (
              <li>{line}</li>
            ))}
          </ul>
          <pre>
            <code>{CHAIN.command}</code>
          </pre>
          <p>{CHAIN.proves}</p>
        </ShopPage>,
      );
    })
    .get("/records.jsonl", (c) => {
      c.header("content-disposition", 'attachment; filename="records.jsonl"');
      return c.body(linesOf(shop), 200, { "content-type": "text/plain; charset=utf-8" });
    });
}

/** The chain as it is read: some lines at a time, so that however long it is never held as a whole. */
function linesOf(shop: BenchNeeds["shop"]): ReadableStream<Uint8Array> {
  const utf8 = new TextEncoder();
  let after: number | null = 0;
  return new ReadableStream({
    async pull(controller) {
      if (after === null) return controller.close();
      const { lines, next } = await shop.chainLines(after);
      after = next;
      if (lines.length > 0) controller.enqueue(utf8.encode(`${lines.join("\n")}\n`));
      else if (next === null) controller.close();
    },
  });
}
