import { answered, type step } from "#shared/intake/conversation.ts";
import type { Draft } from "#shared/intake/draft.ts";
import { fieldsFor } from "#shared/intake/form-fields.ts";
import { type Circumstances, type Question, questionOf } from "#shared/intake/questions.ts";
import { type FieldProblem, type Fields, readAnswer } from "#shared/intake/read-answer.ts";
import { droppedWords, SAID } from "#shared/messages/owner-words.ts";
import { problemWords } from "#shared/messages/problem-words.ts";
import { TAG_LABELS } from "#shared/messages/tag-lines.ts";
import { awaitVerdict } from "#src/in-browser/await-verdict.ts";
import { entitle, main, noteAddress, onShown, swap } from "#src/in-browser/page-swap.ts";
import { say } from "#src/in-browser/say.ts";
import { redrawTag } from "#src/in-browser/tag.ts";
import { fill, forgetTyped, restoreTyped } from "#src/in-browser/typed.ts";
import { forgetUnsent, send, sendAll, type Unsent, unsent } from "#src/in-browser/unsent.ts";

/** The other tabs hear of each answer through this key. */
const SHARED_DRAFT = "draft";

const forms = new Map<string, DocumentFragment>();
let draft: Draft = {};
let now: Circumstances | null = null;

/** Goes from question to question on this device; the answers follow to the shop as the network allows. */
export function converse(): void {
  onShown(readPage);
  addEventListener("storage", ({ key, newValue }) => {
    if (key !== SHARED_DRAFT) return;
    if (newValue === null) return location.reload();
    draft = JSON.parse(newValue) as Draft;
    redrawTag(draft);
  });
}

/** Takes the answers from the page, adds those still on their way, and fetches the forms once. */
function readPage({ dataset }: HTMLElement): void {
  if (dataset["draft"] === undefined || dataset["now"] === undefined) return;
  draft = JSON.parse(dataset["draft"]) as Draft;
  now = JSON.parse(dataset["now"]) as Circumstances;
  if (forms.size === 0) void fetchForms();
  const late = unsent();
  if (late.length === 0) return;
  for (const { question, fields } of late) take(question, toFields(fields));
  redrawTag(draft);
  const stale = late.some(({ question }) => question === main().querySelector("form")?.dataset["question"]);
  void sendAll().then((sent) => sent && stale && swap("/intake", { push: false }));
}

async function fetchForms(): Promise<void> {
  try {
    const response = await fetch("/intake/questions");
    const page = new DOMParser().parseFromString(await response.text(), "text/html");
    for (const form of page.querySelectorAll("template")) forms.set(form.dataset["question"] ?? "", form.content);
  } catch {
    // Without the forms each answer is posted and the next page fetched, as without script.
  }
}

/** Can this form be answered here, without waiting for the shop? */
export const isLocal = (form: HTMLFormElement): boolean =>
  form.dataset["question"] !== undefined && now !== null && forms.size > 0;

/** An answer was given: print it, send it, ask the next question. */
export function answer(form: HTMLFormElement, submitter: HTMLElement | null): void {
  const id = form.dataset["question"] ?? "";
  const fields = fieldsIn(form, submitter);
  const taken = take(id, toFields(fields));
  if (taken === null) return;
  if ("problem" in taken) {
    showProblem(form, taken);
    return;
  }
  forgetTyped(form);
  document.querySelector("[data-intro]")?.remove();
  send({ question: id, fields });
  localStorage.setItem(SHARED_DRAFT, JSON.stringify(draft));
  redrawTag(draft);
  const dropped = document.getElementById("dropped");
  if (dropped !== null) dropped.textContent = droppedWords(taken.dropped.map((question) => TAG_LABELS[question]));
  // The first page stands at the root, which leads to the next open question as soon as there is an answer.
  noteAddress(`/intake/${id}`, false);
  if (taken.next === null) awaitVerdict(taken.dropped);
  else showQuestion(taken.next);
}

/** A date that is only half typed has no value of its own, and must not pass for one that was left empty. */
function fieldsIn(form: HTMLFormElement, submitter: HTMLElement | null): Unsent["fields"] {
  const halfTyped = [...form.querySelectorAll("input")].filter(({ validity }) => validity.badInput);
  return [...new FormData(form, submitter)].map(([name, value]) => [
    name,
    halfTyped.some((input) => input.name === name) ? "?" : String(value),
  ]);
}

function take(id: string, fields: Fields): FieldProblem | ReturnType<typeof step> | null {
  const question = questionOf(id);
  if (question === undefined || now === null) return null;
  const read = readAnswer(question, fields, draft, now.onDate);
  if (!read.ok) return read.refusal;
  const stepped = answered(draft, question.id, read.value, now);
  draft = stepped.draft;
  return stepped;
}

function toFields(entries: readonly (readonly [string, string])[]): Fields {
  const fields: Record<string, string[]> = {};
  for (const [name, value] of entries) fields[name] = [...(fields[name] ?? []), value];
  return fields;
}

function showProblem(form: HTMLFormElement, problem: FieldProblem): void {
  for (const field of form.querySelectorAll("[aria-invalid]")) field.removeAttribute("aria-invalid");
  const field = form.querySelector<HTMLInputElement>(`[name="${problem.field}"]`);
  const typed = field?.closest(".field");
  if (typed) field?.setAttribute("aria-invalid", "true");
  const place = form.querySelector<HTMLElement>("#problem");
  field?.focus();
  if (place === null) return;
  place.textContent = problemWords(problem);
  place.hidden = false;
  // Above the field that it is about, so that both are in sight on a phone; else above all choices.
  (typed ?? form.querySelector("fieldset"))?.before(place);
  place.scrollIntoView({ block: "nearest" });
}

/** @returns whether the question could be shown from here */
function showQuestion(question: Question, push = true): boolean {
  const place = document.getElementById("question");
  const content = forms.get(question.id);
  if (place === null || content === undefined) return false;
  place.replaceChildren(content.cloneNode(true));
  const form = place.querySelector("form");
  const before = draft[question.id];
  if (form !== null && before !== undefined) {
    fill(
      form,
      Object.entries(fieldsFor(question, before)).flatMap(([name, values]) =>
        [values].flat().map((value) => [name, value] as const),
      ),
    );
  }
  if (form !== null) restoreTyped(form);
  noteAddress(`/intake/${question.id}`, push);
  entitle(place);
  return true;
}

/** @returns whether the address is a question of this page */
export const showAddress = (path: string, push: boolean): boolean => {
  const question = questionOf(path.replace("/intake/", ""));
  return question !== undefined && showQuestion(question, push);
};

/** Another craft, another conversation: nothing of the old one is sent any more, and the other tabs begin anew too. */
export async function startOver(form: HTMLFormElement): Promise<void> {
  try {
    await fetch(form.action, { method: "POST", redirect: "manual" });
  } catch {
    return say(SAID.nothingSent);
  }
  forgetUnsent();
  localStorage.removeItem(SHARED_DRAFT);
  sessionStorage.clear();
  location.assign("/");
}
