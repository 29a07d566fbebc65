import type { BrowserContextOptions, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import type { QuestionId } from "#shared/intake/draft.ts";
import { RESUME } from "#shared/messages/owner-words.ts";
import { answerAll, answerOne, fillIn, giveAnswer, postAnswers, untilAsked } from "#tests/support/owner-walk.ts";
import { SLIP_CHECK } from "#tests/support/owners.ts";
import { visiting } from "#tests/support/visiting.ts";

const { shop, somebody, visit } = visiting();

describe.each([
  ["with", true],
  ["without", false],
])("%s the script", (_, javaScriptEnabled) => {
  it("touching a line of the tag opens its question with the answer in it; what no longer applies goes, by name", async () => {
    const { page } = await asked("lastRebuild", { javaScriptEnabled });
    const before = await tagLines(page);
    await page.getByRole("link", { name: "Charger modified" }).click();
    await untilAsked(page, "chargerModified");
    expect(await page.getByRole("radio", { name: "Yes" }).isChecked()).toBe(true);
    await giveAnswer(page, { choice: "no" });
    await untilAsked(page, "lastRebuild");
    expect(await page.getByText("No longer needed").textContent()).toBe(
      "No longer needed, so taken off the tag: Peak boost, Changed since slip set.",
    );
    expect(await tagLines(page)).toEqual([...before.slice(0, -3), "Charger modified: No"]);
    await giveAnswer(page, { when: "never" });
    await untilAsked(page, "lastSlipSet");
    expect(await page.getByText("No longer needed").count()).toBe(0);
  });

  it("the back and forward buttons show earlier questions with their answers", async () => {
    const page = await visit({ javaScriptEnabled });
    for (let given = 0; given < 4; given += 1) await answerOne(page, SLIP_CHECK);
    await untilAsked(page, "riding");
    await page.goBack();
    await untilAsked(page, "engineHours");
    expect(await page.getByLabel("Engine hours").inputValue()).toBe("60");
    await page.goBack();
    await page.goBack();
    await untilAsked(page, "unitFamily");
    expect(await page.getByRole("radio", { name: /^Set nut/ }).isChecked()).toBe(true);
    expect(await tagLines(page)).toHaveLength(4);
    await page.goForward();
    await page.goForward();
    await untilAsked(page, "engineHours");
    expect(await page.getByLabel("Engine hours").inputValue()).toBe("60");
  });

  it("a reload in the middle keeps the question and every answer", async () => {
    const { page } = await asked("riding", { javaScriptEnabled });
    const before = await tagLines(page);
    await page.reload();
    await untilAsked(page, "riding");
    expect(await tagLines(page)).toEqual(before);
    expect(before).toHaveLength(4);
  });
});

it("the back button leads from the second question to the first one, and from the verdict to the last", async () => {
  const page = await visit();
  await answerOne(page, SLIP_CHECK);
  await page.goBack();
  await untilAsked(page, "symptoms");
  expect(await page.getByLabel("None of these").isChecked()).toBe(true);
  await answerAll(page, SLIP_CHECK);
  await page.goBack();
  await untilAsked(page, "washers");
  expect(await page.getByRole("radio", { name: "Metal" }).isChecked()).toBe(true);
});

it("what is typed or ticked but not yet sent outlives a reload and a look at another question", async () => {
  const { page } = await asked("lastRebuild");
  await fillIn(page, { when: "known", date: "2026-05-31", hours: "4" });
  await page.reload();
  await expectFilled();
  await page.getByRole("link", { name: "Built" }).click();
  await untilAsked(page, "builtYear");
  await page.goBack();
  await untilAsked(page, "lastRebuild");
  await expectFilled();

  async function expectFilled(): Promise<void> {
    expect(await page.getByLabel("I know it, at least roughly").isChecked()).toBe(true);
    expect(await page.getByLabel("Date").inputValue()).toBe("2026-05-31");
    expect(await page.getByLabel("Engine hours then").inputValue()).toBe("4");
  }
});

it("a second tab prints each answer on its tag as the first one gives it", async () => {
  const { context, visit: open } = await somebody();
  const first = await open();
  const second = await open();
  await first.bringToFront();
  await answerOne(first, SLIP_CHECK);
  await second.getByRole("link", { name: "Noticed None of these" }).waitFor();
  await answerOne(first, SLIP_CHECK);
  await second.getByRole("link", { name: "Clutch Set nut" }).waitFor();
  await second.bringToFront();
  await answerOne(second, SLIP_CHECK);
  expect(await tagLines(second)).toEqual(await tagLines(first));
  expect(context.pages()).toHaveLength(2);
});

it("starting over in one tab starts the other one over too", async () => {
  const { context, visit: open } = await somebody();
  const first = await open();
  await answerOne(first, SLIP_CHECK);
  await postAnswers(context.request, { origin: shop().origin, owner: SLIP_CHECK });
  const second = await open("/verdict");
  await second.getByRole("button", { name: "Start over with another craft" }).click();
  await second.getByText("Your answers print here.").waitFor();
  await first.getByText("Your answers print here.").waitFor();
  expect(await tagLines(second)).toEqual([]);
});

it("the resume link goes on with everything elsewhere, and only looking at it changes nothing", async () => {
  const { page } = await asked("riding");
  const link = await page.getByLabel("Link", { exact: true }).inputValue();
  await page.getByText(RESUME.offer).click();
  expect(await page.getByLabel("Link", { exact: true }).isVisible()).toBe(true);

  const elsewhere = await somebody();
  const other = await elsewhere.visit(new URL(link).pathname);
  await other.reload();
  expect(await elsewhere.context.cookies()).toEqual([]);
  await other.getByRole("button", { name: "Go on here" }).click();
  await untilAsked(other, "riding");
  expect(await tagLines(other)).toEqual(await tagLines(page));

  await giveAnswer(other, { choice: "hard" });
  await untilAsked(other, "engineModified");
  await page.reload();
  await page.getByRole("link", { name: "Ridden Hard" }).waitFor();
});

it("a resume link that is not known says so, and leads to the start", async () => {
  const { visit: open } = await somebody();
  const page = await open("/resume/nobody-has-ever-had-this");
  await page.getByText(RESUME.gone).waitFor();
  await page.getByRole("link", { name: "Start" }).click();
  await untilAsked(page, "symptoms");
});

/** An owner who has said everything before this question, and is asked it now. */
async function asked(question: QuestionId, options?: BrowserContextOptions) {
  const { context, visit: open } = await somebody(options);
  await postAnswers(context.request, { origin: shop().origin, owner: SLIP_CHECK, before: question });
  const page = await open("/intake");
  await untilAsked(page, question);
  return { context, page };
}

async function tagLines(page: Page): Promise<readonly string[]> {
  const lines = await page.locator(".tag-lines li").all();
  return Promise.all(
    lines.map(async (line) =>
      [await line.locator("span").textContent(), await line.locator("b").textContent()].join(": "),
    ),
  );
}
