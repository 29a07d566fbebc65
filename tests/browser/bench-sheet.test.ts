import { expect, it } from "vitest";
import { CLASH, SHEET, UNSENT } from "#shared/messages/sheet-page-words.ts";
import { STEP_WORDS } from "#shared/messages/sheet-words.ts";
import { NOT_SIGNED_IN } from "#shared/messages/shop-sign-in-words.ts";
import { FIRST_STAFF_NAME } from "#shared/shop/staff.ts";
import { aUnitReceived, DULL_STEPS, fillStep, keepStep, openStep, stepAt } from "#tests/browser/bench-desk.ts";
import { bringInspector, inspectPage } from "#tests/browser/inspect-page.ts";
import { visiting } from "#tests/support/visiting.ts";

const { shop, somebody } = visiting();

/** A tablet on the bench. */
const TABLET = { width: 820, height: 1180 };

async function atBench(options: object = {}) {
  const desk = await somebody({ viewport: TABLET });
  const number = await aUnitReceived(desk.context, shop());
  const { context } = await somebody({ viewport: TABLET, ...options });
  await context.addCookies(await desk.context.cookies());
  const page = await context.newPage();
  const open = () => page.goto(`${shop().origin}/shop/jobs/${number}/sheet`);
  await open();
  return { context, page, number, open };
}

it("the whole sheet with the script: one step after the other, the dial and the advice live", async () => {
  const { page } = await atBench();
  for (const [step, fields] of DULL_STEPS) {
    await stepAt(page, step).and(page.locator("[open]")).waitFor();
    await fillStep(page, step, fields);
    if (step === "slip-before-lock") {
      expect(await page.locator("[data-advice]").textContent()).toMatch(/The target is expected at \d+°, between/);
    }
    if (step === "final-slip") {
      const figure = stepAt(page, step).locator("[data-dial]");
      expect(await figure.textContent()).toMatch(/Mean 12\.82 ± 0\.\d\d lbf·ft/);
      expect(await figure.getAttribute("data-decision")).toBe("accept");
      expect(await figure.locator(".dial-reading").count()).toBe(3);
      expect(await stepAt(page, step).locator("[name=readings]").count()).toBe(4);
    }
    await keepStep(page, step);
    if (step !== "turn-by-hand") expect(await stepAt(page, step).getAttribute("open"), step).toBeNull();
  }
  await page.getByText(SHEET.complete).waitFor();
  expect(await page.locator("[data-unsent]").count()).toBe(0);
  expect(await stepAt(page, "final-slip").locator("[data-answer]").textContent()).toContain("Mean 12.82 lbf·ft");
});

it("the whole sheet without a script", async () => {
  const { page } = await atBench({ javaScriptEnabled: false });
  for (const [step, fields] of DULL_STEPS) {
    await openStep(page, step);
    await fillStep(page, step, fields);
    await keepStep(page, step);
    await page.getByText(SHEET.saved(STEP_WORDS[step].title)).waitFor();
  }
  await page.getByText(SHEET.complete).waitFor();
});

it("numbers go in by big keys, and the wrench is remembered", async () => {
  const { page } = await atBench({ hasTouch: true });
  const press = async (keys: string) => {
    for (const key of keys) await page.locator(".pad:visible button", { hasText: key }).first().tap();
  };
  await page.locator('[name="readings"]').first().tap();
  const pad = page.locator(".pad:visible");
  for (const button of await pad.locator("button").all()) {
    const box = await button.boundingBox();
    expect(Math.min(box!.width, box!.height)).toBeGreaterThanOrEqual(56);
  }
  await press("15");
  await pad.getByRole("button", { name: "Point" }).tap();
  await press("29");
  await pad.getByRole("button", { name: "Erase" }).tap();
  expect(await page.locator('[name="readings"]').first().inputValue()).toBe("15.2");
  await pad.getByRole("button", { name: "Next" }).tap();
  expect(await page.locator(":focus").getAttribute("id")).toBe("as-found-slip.readings.1");
  await fillStep(page, "as-found-slip", { "tool.accuracyPercent": ["2"], "tool.resolution": ["0.1"] });
  await keepStep(page, "as-found-slip");
  await stepAt(page, "inspect").and(page.locator("[open]")).waitFor();
  await openStep(page, "final-slip");
  expect(await stepAt(page, "final-slip").locator("[data-tool-text]").textContent()).toBe(
    SHEET.toolText("Digital", 2, 0.1),
  );
});

it("without the network the bench goes on; what it wrote is sent in order when the network is back, after a reload too", async () => {
  const { context, page, number } = await atBench();
  const [first, second, third] = DULL_STEPS as [never, never, never] as readonly (typeof DULL_STEPS)[number][];
  await fillStep(page, first![0], first![1]);
  await keepStep(page, first![0]);
  await page.locator('[data-step="as-found-slip"][data-standing="done"]').waitFor();
  await context.setOffline(true);
  for (const [step, fields] of [second!, third!]) {
    await fillStep(page, step, fields);
    await keepStep(page, step);
    await stepAt(page, step).getByText(UNSENT.pending).waitFor();
  }
  await page.getByText(UNSENT.kept).waitFor();
  // Typed, and not written down yet.
  await fillStep(page, "needles-in", { needles: ["38"] });
  await page.close();
  await context.setOffline(false);
  const again = await context.newPage();
  await again.goto(`${shop().origin}/shop/jobs/${number}/sheet`);
  await again.locator('[data-step="needles-out"][data-standing="done"]').waitFor();
  expect(await again.locator("[data-unsent]").count()).toBe(0);
  expect(await stepAt(again, "needles-in").locator("[name=needles]").inputValue()).toBe("38");
});

it("the open sheet can be opened again while the network is away, with what was written, until somebody signs out", async () => {
  const { context, page, number } = await atBench();
  const sheet = `${shop().origin}/shop/jobs/${number}/sheet`;
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await context.setOffline(true);
  const elsewhere = await somebody();
  await elsewhere.context.addCookies(await context.cookies());
  const theirs = await elsewhere.context.newPage();
  await theirs.goto(sheet);
  await openStep(theirs, "lock-nut");
  await keepStep(theirs, "lock-nut");
  await theirs.locator('[data-step="lock-nut"][data-standing="done"]').waitFor();

  await openStep(page, "screws");
  await stepAt(page, "screws").locator("[name=note]").fill("In pattern");
  await keepStep(page, "screws");
  await page.goto(sheet);
  await stepAt(page, "screws").getByText(UNSENT.pending).waitFor();
  expect(await stepAt(page, "screws").locator("[data-answer]").textContent()).toBe("Done (In pattern)");
  // What the page shows is what was kept: the network would know better.
  expect(await stepAt(page, "lock-nut").getAttribute("data-standing")).toBe("open");
  await openStep(page, "impeller");
  await keepStep(page, "impeller");
  await stepAt(page, "impeller").getByText(UNSENT.pending).waitFor();

  await context.setOffline(false);
  for (const step of ["screws", "impeller", "lock-nut"] as const) {
    await page.locator(`[data-step="${step}"][data-standing="done"]`).waitFor();
  }
  expect(await page.locator("[data-unsent]").count()).toBe(0);

  await context.clearCookies();
  await page.goto(sheet);
  await page.getByRole("heading", { level: 1, name: NOT_SIGNED_IN.title }).waitFor();
  await page.waitForFunction(async () => (await caches.keys()).length === 0);
  await context.setOffline(true);
  expect(await page.goto(sheet).catch(() => "nothing")).toBe("nothing");
});

it("two tablets: each sees both entries and chooses; nothing is lost", async () => {
  const { context, page, number } = await atBench();
  const { context: theirs } = await somebody({ viewport: TABLET });
  await theirs.addCookies(await context.cookies());
  const other = await theirs.newPage();
  await other.goto(`${shop().origin}/shop/jobs/${number}/sheet`);

  await openStep(page, "screws");
  await openStep(other, "screws");
  await stepAt(other, "screws").locator("[name=note]").fill("Theirs");
  await keepStep(other, "screws");
  await other.locator('[data-step="screws"][data-standing="done"]').waitFor();
  await stepAt(page, "screws").locator("[name=note]").fill("Mine");
  await keepStep(page, "screws");
  const ask = stepAt(page, "screws").getByRole("alert");
  await ask.getByText("Done (Theirs)").waitFor();
  await ask.getByText("Done (Mine)").waitFor();
  await ask.getByRole("button", { name: CLASH.keepMine }).click();
  await page.locator('[data-step="screws"][data-standing="done"] [data-answer]', { hasText: "Mine" }).waitFor();

  // The other tablet still shows its own entry as the newest.
  await openStep(other, "screws");
  await stepAt(other, "screws").locator("[name=note]").fill("Theirs again");
  await keepStep(other, "screws");
  await stepAt(other, "screws").getByRole("button", { name: CLASH.keepTheirs }).click();
  await other.locator('[data-step="screws"] [data-answer]', { hasText: "Mine" }).waitFor();
  expect(await other.locator("[data-unsent]").count()).toBe(0);
});

it("a shared tablet: what one wrote is not sent as another's, until that one takes it over", async () => {
  const { page, open } = await atBench();
  // As the page stands where somebody else has signed in since it was opened.
  const opener = (name: string) =>
    page.evaluate((it) => document.querySelector("[data-sheet]")?.setAttribute("data-staff", it), name);
  await opener("Tansy Marl");
  await openStep(page, "screws");
  await stepAt(page, "screws").locator("[name=note]").fill("By hand");
  await keepStep(page, "screws");
  const says = UNSENT.refused(UNSENT.otherWriter("Tansy Marl"));
  await stepAt(page, "screws").getByText(says).waitFor();
  await open();
  await stepAt(page, "screws").getByText(says).waitFor();
  // Whoever is at work goes on meanwhile.
  await openStep(page, "impeller");
  await keepStep(page, "impeller");
  await page.locator('[data-step="impeller"][data-standing="done"]').waitFor();

  await openStep(page, "screws");
  await stepAt(page, "screws")
    .getByRole("button", { name: UNSENT.leaveFor("Tansy Marl") })
    .click();
  expect(await stepAt(page, "screws").getAttribute("open")).toBeNull();
  expect(await stepAt(page, "screws").getAttribute("data-standing")).toBe("open");
  await openStep(page, "screws");
  await stepAt(page, "screws").getByRole("button", { name: UNSENT.sendAsMine }).click();
  await page.locator('[data-step="screws"][data-standing="done"]').waitFor();
  expect(await stepAt(page, "screws").textContent()).toContain(`${FIRST_STAFF_NAME}, `);
  expect(await stepAt(page, "screws").locator("[data-answer]").textContent()).toBe("Done (By hand)");
  expect(await page.locator("[data-unsent]").count()).toBe(0);
});

it("two tabs of one tablet send every entry once", async () => {
  const { context, page, number } = await atBench();
  const tab = await context.newPage();
  await tab.goto(`${shop().origin}/shop/jobs/${number}/sheet`);
  await context.setOffline(true);
  for (const [one, step] of [
    [page, "screws"],
    [tab, "lock-nut"],
    [page, "impeller"],
  ] as const) {
    await openStep(one, step);
    await keepStep(one, step);
  }
  await context.setOffline(false);
  for (const one of [page, tab]) {
    for (const step of ["screws", "impeller", "lock-nut"] as const) {
      await stepAt(one, step).and(one.locator('[data-standing="done"]')).waitFor();
    }
    expect(await one.locator("[data-unsent]").count()).toBe(0);
  }
  const job = await context.request.get(`${shop().origin}/shop/jobs/${number}`);
  expect((await job.text()).split("Bench sheet").length).toBeGreaterThan(3);
});

it("what the shop does not take comes back to be mended", async () => {
  const { page } = await atBench();
  await fillStep(page, "as-found-slip", {
    readings: ["15.2"],
    "tool.accuracyPercent": ["40"],
    "tool.resolution": ["0.1"],
  });
  await keepStep(page, "as-found-slip");
  await stepAt(page, "as-found-slip").getByText(`${SHEET.toolAccuracy}: a number from 0.001 to 20.`).waitFor();
  await fillStep(page, "as-found-slip", { "tool.accuracyPercent": ["4"] });
  await keepStep(page, "as-found-slip");
  await page.locator('[data-step="as-found-slip"][data-standing="done"]').waitFor();
  await openStep(page, "needles-out");
  await keepStep(page, "needles-out");
  await stepAt(page, "needles-out").getByText(SHEET.mend).waitFor();
  expect(await page.locator(":focus").getAttribute("name")).toBe("needles");
});

it("every step can be used by everybody, on every screen", async () => {
  const { context, page, open } = await atBench();
  await bringInspector(context);
  await open();
  for (const [step] of DULL_STEPS) {
    await openStep(page, step);
    if (step === "as-found-slip") await page.locator('[name="readings"]').first().focus();
    expect(await inspectPage(page, step)).toEqual([]);
  }
});

it("prints as a list of all steps, with room to write", async () => {
  const { page } = await atBench();
  await page.emulateMedia({ media: "print" });
  expect(await page.locator(".steps").isVisible()).toBe(false);
  expect(await page.locator(".paper > li").count()).toBe(DULL_STEPS.length + 1);
  const pdf = (await page.pdf({ format: "Letter", preferCSSPageSize: false })).toString("latin1");
  expect(pdf.match(/\/Type\s*\/Page\b/g)?.length).toBeLessThanOrEqual(3);
});
