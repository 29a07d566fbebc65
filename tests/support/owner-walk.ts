import type { APIRequestContext, Locator, Page } from "playwright-core";
import type { QuestionId } from "#shared/intake/draft.ts";
import { QUESTIONS } from "#shared/intake/questions.ts";
import { FIELD } from "#shared/intake/read-answer.ts";

/** What is put into the form of one question, by field name. */
export type Said = Readonly<Record<string, string | readonly string[]>>;

/** One owner: what is said to each question, and how the verdict is headed. */
export type Owner = {
  readonly who: string;
  readonly says: Readonly<Partial<Record<QuestionId, Said>>>;
  readonly verdict: string;
};

const form = (page: Page): Locator => page.locator("form[data-question]");

export const askedNow = async (page: Page): Promise<QuestionId> =>
  (await form(page).getAttribute("data-question")) as QuestionId;

/** Waits until the question stands there and may be answered. */
export const untilAsked = (page: Page, question: QuestionId): Promise<void> =>
  page.locator(`form[data-question=${question}]`).waitFor();

export const pressNext = (page: Page): Promise<void> =>
  form(page).getByRole("button", { name: "Next", exact: true }).click();

/** Fills the form of the question that stands there. */
export async function fillIn(page: Page, said: Said): Promise<void> {
  for (const [name, values] of Object.entries(said)) {
    for (const value of [values].flat()) await put(form(page), name, value);
  }
}

async function put(within: Locator, name: string, value: string): Promise<void> {
  const fields = within.locator(`[name=${name}]:not(button)`);
  const tick = within.locator(`[name=${name}][value=${JSON.stringify(value)}]:is([type=radio], [type=checkbox])`);
  if ((await tick.count()) === 1) await tick.check();
  else if (name === FIELD.unit) await fields.selectOption(value);
  else await fields.fill(value);
}

/** Answers the question that stands there, and waits for what follows. */
export async function answerOne(page: Page, { who, says }: Owner): Promise<void> {
  const question = await askedNow(page);
  const said = says[question];
  if (said === undefined) throw new Error(`${who} was asked ${question}.`);
  await giveAnswer(page, said);
  await page.locator(`form[data-question]:not([data-question=${question}]), h1:not(form h1)`).first().waitFor();
}

export async function giveAnswer(page: Page, said: Said): Promise<void> {
  if (FIELD.notSure in said) return form(page).getByRole("button", { name: "Not sure" }).click();
  await fillIn(page, said);
  await pressNext(page);
}

/** Answers question after question until none is left; `each` looks at every one before it is answered. */
export async function answerAll(
  page: Page,
  owner: Owner,
  each: (question: QuestionId) => Promise<void> = async () => {},
): Promise<void> {
  while (await form(page).isVisible()) {
    await each(await askedNow(page));
    await answerOne(page, owner);
  }
  await page.getByRole("heading", { level: 1, name: owner.verdict }).waitFor();
}

/** Says the same without looking at the pages, for tests that begin later; up to the question `before`. */
export async function postAnswers(
  request: APIRequestContext,
  { origin, owner, before }: { readonly origin: string; readonly owner: Owner; readonly before?: QuestionId },
): Promise<void> {
  for (const { id } of QUESTIONS) {
    if (id === before) return;
    const said = owner.says[id];
    if (said === undefined) continue;
    const body = new URLSearchParams();
    for (const [name, values] of Object.entries(said)) for (const value of [values].flat()) body.append(name, value);
    const headers = { accept: "application/json", "content-type": "application/x-www-form-urlencoded", origin };
    const response = await request.post(`${origin}/intake/${id}`, { data: body.toString(), headers });
    if (!response.ok()) throw new Error(`${owner.who} was not understood at ${id}: ${await response.text()}`);
  }
}

/** Picks the first time on offer, or the first of the fresh ones where it was gone, and waits for the page to book it. */
export async function holdFirstOffer(page: Page): Promise<void> {
  const held = page.getByRole("heading", { level: 1, name: "Book the time we hold for you" });
  const refused = page.getByRole("alert").filter({ hasText: "just took that time" });
  const pick = () => page.getByRole("button", { name: "Hold this time" }).first().click();
  await pick();
  await held.or(refused).waitFor();
  if (await refused.isVisible()) await pick();
  await held.waitFor();
}

/** A name, a phone number and the way back: all that has to be said to book. */
export async function writeContact(page: Page): Promise<void> {
  await page.getByLabel("Your name").fill("Ada Quill");
  await page.getByLabel("Phone").fill("202-555-0143");
  await page.getByLabel("I collect the unit at the shop").check();
}

/** Books, and waits for the job tag. @returns the job number */
export async function bookIt(page: Page): Promise<string> {
  await page.getByRole("button", { name: "Book it" }).click();
  const heading = page.getByRole("heading", { level: 1, name: "Job tag" });
  await heading.waitFor();
  return (await heading.locator(".number").textContent()) ?? "";
}
