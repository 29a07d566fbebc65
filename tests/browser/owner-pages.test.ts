import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { CONTACT_WORDS } from "#shared/messages/contact-words.ts";
import { ERROR_WORDS } from "#shared/messages/error-words.ts";
import { OFFLINE, RESUME, WAITING } from "#shared/messages/owner-words.ts";
import { bringInspector, inspectPage } from "#tests/browser/inspect-page.ts";
import {
  answerAll,
  answerOne,
  bookIt,
  holdFirstOffer,
  type Owner,
  postAnswers,
  pressNext,
  writeContact,
} from "#tests/support/owner-walk.ts";
import { FULL_REBUILD, NOT_DUE, SLIP_CHECK, STOP_RIDING } from "#tests/support/owners.ts";
import { startShop } from "#tests/support/running-shop.ts";
import { visiting } from "#tests/support/visiting.ts";

const { shop, somebody } = visiting();

/** Between them they are asked every question. */
it.each([STOP_RIDING, SLIP_CHECK])(
  "every question that $who is asked, before and after a wrong answer",
  async (owner) => {
    const { page, look, found } = await looking("/");
    await answerAll(page, owner, async (question) => {
      await look(question);
      await pressNext(page);
      await page.getByRole("alert").waitFor();
      await look(`${question}, not answered`);
    });
    await look(owner.verdict);
    expect(found()).toEqual([]);
  },
);

it.each([FULL_REBUILD, NOT_DUE])("the verdict of $who", async (owner) => {
  const { look, found } = await looking("/verdict", owner);
  await look(owner.verdict);
  expect(found()).toEqual([]);
});

it("the wait for the verdict without network", async () => {
  const { page, look, found } = await looking("/");
  await answerOne(page, SLIP_CHECK);
  await page.context().setOffline(true);
  while (!(await page.getByRole("heading", { level: 1, name: WAITING.title }).isVisible())) {
    await answerOne(page, SLIP_CHECK);
  }
  await page.getByText(OFFLINE.kept).waitFor();
  await look(WAITING.title);
  expect(found()).toEqual([]);
});

it("booking, from the empty form to the cancelled job", async () => {
  const { page, look, found } = await looking("/verdict", SLIP_CHECK);
  await holdFirstOffer(page);
  await look("the contact form");
  await page.getByLabel("Email", { exact: true }).fill("nobody at home");
  await page.getByRole("button", { name: "Book it" }).click();
  await page.getByRole("alert").waitFor();
  await look("the contact form with problems");
  await writeContact(page);
  await page.getByLabel("Email", { exact: true }).fill("");
  await page.locator("[name=hold]").evaluate((field) => field.setAttribute("value", "no-such-hold"));
  await page.getByRole("button", { name: "Book it" }).click();
  await page.getByText(CONTACT_WORDS.holdEnded).waitFor();
  await look("the contact form when the held time has gone");
  await bookIt(page);
  await look("the tag");
  await page.getByText("Move it to another time").click();
  await page.getByText("Cancel the job").click();
  await look("the tag with all opened");
  await page.getByRole("button", { name: "Yes, cancel it" }).click();
  await page.getByRole("heading", { level: 1, name: "Cancelled job" }).waitFor();
  await look("the cancelled tag");
  expect(found()).toEqual([]);
});

it("going on elsewhere, and addresses that lead nowhere", async () => {
  const { page, look, found } = await looking("/intake", SLIP_CHECK);
  await page.goto(`${shop().origin}/intake/riding`);
  await page.getByText(RESUME.offer).click();
  await look("the offer to go on elsewhere");
  await page.goto(await page.getByLabel("Link", { exact: true }).inputValue());
  await look(RESUME.title);
  await page.goto(`${shop().origin}/resume/nobody-has-ever-had-this`);
  await look(RESUME.gone);
  await page.goto(`${shop().origin}/nothing/here`);
  await page.getByText(ERROR_WORDS.notFound.detail).waitFor();
  await look("not found");
  expect(found()).toEqual([]);
});

it("a site that is asked too often", async () => {
  const busy = await startShop({ vars: { REQUESTS_PER_MINUTE: "1" } });
  try {
    const { page, look, found } = await looking("/");
    // Another shop, and so a stranger to the one this window may ask.
    await page.route(`${shop().origin}/**`, async (route) => {
      const { pathname } = new URL(route.request().url());
      await route.fulfill({ response: await route.fetch({ url: `${busy.origin}${pathname}` }) });
    });
    await page.goto(`${shop().origin}/`);
    await page.goto(`${shop().origin}/`);
    await page.getByText(ERROR_WORDS.tooMany.detail).waitFor();
    await look("too many requests");
    expect(found()).toEqual([]);
  } finally {
    await busy.stop();
  }
});

/** Somebody's window, in which page after page is looked at; `found` tells everything that is wrong with them. */
async function looking(path: string, owner?: Owner) {
  const { context, visit } = await somebody();
  await bringInspector(context);
  if (owner !== undefined) await postAnswers(context.request, { origin: shop().origin, owner });
  const page: Page = await visit(path);
  const faults: string[] = [];
  const look = async (name: string) => {
    faults.push(...(await inspectPage(page, name)));
  };
  return { page, look, found: () => faults };
}
