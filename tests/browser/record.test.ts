import type { Page } from "playwright-core";
import { beforeAll, expect, it } from "vitest";
import type { Answers, RememberedService } from "#shared/craft/vocabulary.ts";
import { CHECK, STANDING_WORDS } from "#shared/messages/check-words.ts";
import { RECORD } from "#shared/messages/record-words.ts";
import { bringInspector, inspectPage } from "#tests/browser/inspect-page.ts";
import { serveUnit } from "#tests/browser/served-unit.ts";
import { signIn } from "#tests/support/sign-in.ts";
import { visiting } from "#tests/support/visiting.ts";

const { shop, somebody } = visiting();

const NEVER: RememberedService = { when: "never", date: null, engineHours: null, slipLeftAt: null };
const SERIAL = "SN-40417";
/** Whining: due for a rebuild, whatever its clocks say. */
const rebuild = (engineHours: number): Answers => ({
  unitFamily: "set-nut",
  builtYear: 2026,
  engineHours,
  riding: "easy",
  mods: { engine: false, charger: false, boostPsi: null, changedSinceSlip: false },
  lastRebuild: NEVER,
  lastSlipSet: NEVER,
  washers: "metal",
  symptoms: ["whine"],
  notLooked: false,
});

let newest: { readonly number: string; readonly token: string };
beforeAll(async () => {
  const { context } = await somebody();
  const { request } = context;
  await signIn(request, shop());
  const served = { shop: shop(), request, serial: SERIAL };
  await serveUnit({ ...served, answers: rebuild(40), found: [11.2, 11.3, 11.2], left: [12.5, 12.55, 12.5] });
  await serveUnit({ ...served, answers: rebuild(118), found: [11.6, 11.55, 11.65], left: [12.6, 12.55, 12.6] });
  const parts = {
    "parts.friction-washers.condition": "worn",
    "parts.friction-washers.note": "Glazed, 0.2 mm under new",
    "parts.drive-gear.condition": "broken",
    "parts.drive-gear.note": "Two teeth chipped",
    "parts.ball-bearings.condition": "worn",
  };
  const good = ["spring-washers", "needle-bearings", "shaft", "seals", "retaining-plate", "housing", "impeller"];
  newest = await serveUnit({
    ...served,
    answers: rebuild(205),
    found: [10.9, 10.8, 10.85],
    left: [12.5, 12.45, 12.5],
    steps: {
      inspect: { ...Object.fromEntries(good.map((part) => [`parts.${part}.condition`, "good"])), ...parts },
      screws: { do: "skip", skipWhy: "New screws are on the way; fitted by hand for now" },
    },
  });
});

const recordPath = () => `/tag/${newest.token}/record`;

/** Whoever serves opens shop pages in the same browser. */
async function staff() {
  const it = await somebody();
  await bringInspector(it.context);
  await signIn(it.context.request, shop());
  return it;
}

it.each([
  ["Letter", [612, 792]],
  ["A4", [595, 842]],
] as const)("a record prints on one page of %s", async (format, [width, height]) => {
  const page = await (await somebody()).visit(recordPath());
  await page.emulateMedia({ media: "print", colorScheme: "dark" });
  expect(await page.getByRole("heading", { level: 1 }).textContent()).toContain(newest.number);
  expect(await page.getByRole("button", { name: RECORD.print }).isVisible()).toBe(false);
  const pdf = (await page.pdf({ format })).toString("latin1");
  const boxes = [...pdf.matchAll(/\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/g)];
  expect(boxes).toHaveLength(1);
  expect(Math.abs(Number(boxes[0]?.[1]) - width)).toBeLessThan(2);
  expect(Math.abs(Number(boxes[0]?.[2]) - height)).toBeLessThan(2);
});

it("whoever holds the record follows its code to a page that vouches for it", async () => {
  const page = await (await somebody()).visit(recordPath());
  const code = (await page.locator("a.code").textContent())?.trim() ?? "";
  await page.goto(`${shop().origin}/check`);
  await page.getByLabel(CHECK.code, { exact: true }).fill(code.toLowerCase().replaceAll("-", ""));
  await page.getByRole("button", { name: CHECK.check }).click();
  await page.getByRole("heading", { level: 1, name: STANDING_WORDS.genuine.title }).waitFor();
  expect(await page.locator("dl").textContent()).toContain("0417");
});

it("the drawing lies within its frame, and the table says the same", async () => {
  const page = await (await somebody()).visit(recordPath());
  const outside = await page.locator("svg.slip-chart").evaluate((svg) => {
    const frame = svg.getBoundingClientRect();
    return [...svg.querySelectorAll("circle, rect, line, path, text")].filter((it) => {
      const box = it.getBoundingClientRect();
      return (
        box.left < frame.left - 1 ||
        box.right > frame.right + 1 ||
        box.top < frame.top - 1 ||
        box.bottom > frame.bottom + 1
      );
    }).length;
  });
  expect(outside).toBe(0);
  expect(await page.locator("svg.slip-chart circle").count()).toBe(6);
  expect(await page.getByRole("region", { name: RECORD.historyTable }).getByRole("row").count()).toBe(4);
});

it("every page of a record passes the inspection", async () => {
  const { visit } = await staff();
  const found: string[] = [];
  const look = async (path: string, name: string): Promise<Page> => {
    const page = await visit(path);
    found.push(...(await inspectPage(page, name)));
    return page;
  };
  const record = await look(recordPath(), "The owner's record");
  const code = (await record.locator("a.code").textContent())?.trim() ?? "";
  await look("/check", "Check");
  await look("/check/16JD", "A code that is none");
  await look(`/check/${code}`, "A genuine code");
  await look("/check/16JD-Q9W1-DFWF-077Y-MGA1-J", "A code that is not known");
  const own = await look(`/shop/jobs/${newest.number}/record`, "The shop's record");
  await own.getByRole("button", { name: "Seal the correction" }).click();
  await own.getByRole("alert").waitFor();
  found.push(...(await inspectPage(own, "A correction that lacks its reason")));
  await look("/shop/records", "All records");
  await look("/shop/rise", "The lock nuts' rise");
  expect(found).toEqual([]);
});
