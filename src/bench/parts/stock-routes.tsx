import { type Context, Hono } from "hono";
import { wallOf } from "#shared/calendar/zone-clock.ts";
import { STOCK } from "#shared/messages/stock-words.ts";
import { type NamedShelf, sameShelf, shelfOf } from "#shared/shop/shelf.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import { OrderPage } from "#src/bench/parts/order-page.tsx";
import { readCount, readNote } from "#src/bench/parts/read-count.ts";
import { type ShelfForm, ShelfPage } from "#src/bench/parts/shelf-page.tsx";
import { shelfPath } from "#src/bench/parts/shelf-path.ts";
import { StockPage } from "#src/bench/parts/stock-page.tsx";
import type { StaffVariables } from "#src/bench/session.ts";
import { readForm } from "#src/http/read-form.ts";

const UNTYPED: ShelfForm = { typed: {}, problems: {} };
const MOST_RECEIVED = 999;
const MOST_FOUND = 9999;

/** The shop's parts: what is there, what to order, and one shelf at a time. */
export function stockRoutes(needs: BenchNeeds) {
  const { shop } = needs;
  return new Hono<{ Variables: StaffVariables }>()
    .get("/", async (c) => {
      const [{ settings }, stock] = await Promise.all([shop.settings(), shop.stock()]);
      return c.html(<StockPage front={settings.front} stock={stock} />);
    })
    .get("/order", async (c) => {
      const [{ settings }, stock] = await Promise.all([shop.settings(), shop.stock()]);
      const { date } = wallOf(settings.calendar.zone, needs.now());
      return c.html(<OrderPage settings={settings} stock={stock} today={date} />);
    })
    .get("/:part/:family", async (c) => {
      const shelf = shelfIn(c);
      return shelf === undefined ? c.notFound() : c.html(await page(c, needs, shelf, UNTYPED));
    })
    .post("/:part/:family/receive", async (c) => {
      const shelf = shelfIn(c);
      if (shelf === undefined) return c.notFound();
      const typed = await readForm(c);
      const count = readCount(typed["count"], 1, MOST_RECEIVED);
      if (count === null) {
        const form = { typed, problems: { count: STOCK.number(1, MOST_RECEIVED) } };
        return c.html(await page(c, needs, shelf, form), 422);
      }
      await shop.receiveParts({ ...asked(c, typed, needs), shelf: bare(shelf), count, note: readNote(typed["from"]) });
      return c.redirect(`${shelfPath(shelf)}?done=received`, 303);
    })
    .post("/:part/:family/count", async (c) => {
      const shelf = shelfIn(c);
      if (shelf === undefined) return c.notFound();
      const typed = await readForm(c);
      const found = readCount(typed["found"], 0, MOST_FOUND);
      const note = readNote(typed["why"]);
      if (found === null || note === null) {
        const problems = {
          ...(found === null && { found: STOCK.number(0, MOST_FOUND) }),
          ...(note === null && { why: STOCK.noteNeeded }),
        };
        return c.html(await page(c, needs, shelf, { typed, problems }), 422);
      }
      await shop.countParts({ ...asked(c, typed, needs), shelf: bare(shelf), found, note });
      return c.redirect(`${shelfPath(shelf)}?done=counted`, 303);
    });
}

type StockContext = Context<{ Variables: StaffVariables }>;

const shelfIn = (c: Context): NamedShelf | undefined =>
  shelfOf({ part: c.req.param("part") ?? "", family: c.req.param("family") ?? "" });

const bare = ({ part, family }: NamedShelf) => ({ part, family });

/** Who asks, and by which key; a form without one is new each time. */
const asked = (c: StockContext, typed: Readonly<Record<string, string>>, needs: BenchNeeds) => ({
  staff: c.var.staff.name,
  key: typed["wish"] || needs.newId(),
});

async function page(c: Context, { shop, newId }: BenchNeeds, shelf: NamedShelf, form: ShelfForm) {
  const [{ settings }, stock, entries] = await Promise.all([shop.settings(), shop.stock(), shop.shelf(bare(shelf))]);
  const line = stock.find((it) => sameShelf(it, shelf));
  if (line === undefined) throw new Error("A shelf is missing from the stock");
  const done = c.req.query("done");
  const notice = done === "received" || done === "counted" ? STOCK[done] : undefined;
  const wishes = [newId(), newId()] as const;
  return <ShelfPage settings={settings} line={line} entries={entries} form={form} wishes={wishes} notice={notice} />;
}
