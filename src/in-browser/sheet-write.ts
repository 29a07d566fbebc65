import type { SheetStepId } from "#shared/job/sheet-entry.ts";
import { lacksOf } from "#shared/job/sheet-fields.ts";
import type { Queued } from "#shared/job/sheet-queue.ts";
import { mendField, SHEET } from "#shared/messages/sheet-page-words.ts";
import { element } from "#src/in-browser/element.ts";
import { say } from "#src/in-browser/say.ts";
import { forgetDraft } from "#src/in-browser/sheet-draft.ts";
import { tell } from "#src/in-browser/sheet-news.ts";
import {
  atWork,
  fieldsIn,
  jobNumber,
  kindOf,
  sectionAround,
  sections,
  setStamp,
  stepOf,
} from "#src/in-browser/sheet-place.ts";
import { isOnItsWay, keep, kept } from "#src/in-browser/sheet-store.ts";
import { rememberTool } from "#src/in-browser/sheet-tool.ts";

/** A form is kept on the device first and sent from there: the bench goes on whether or not the network is there. */
export function bringWriting(): void {
  document.addEventListener("submit", (event) => {
    const form = event.target;
    if (!(form instanceof HTMLFormElement) || !("sheetForm" in form.dataset)) return;
    const section = sectionAround(form);
    if (section === null) return;
    event.preventDefault();
    write(section, form, event.submitter);
  });
  document.addEventListener("click", ({ target }) => {
    const section = target instanceof Element ? target.closest("summary")?.parentElement : null;
    // The step that was opened by hand comes to the top, once it is open.
    if (section?.matches("[data-step]")) setTimeout(() => section.scrollIntoView({ block: "start" }));
  });
}

function write(section: HTMLDetailsElement, form: HTMLFormElement, button: HTMLElement | null): void {
  const fields = fieldsIn(form, button);
  const lacks = lacksOf(kindOf(section), fields);
  showLacks(form, lacks);
  if (lacks.length > 0) return;
  rememberTool(form);
  const step = stepOf(section);
  const before = kept(jobNumber());
  // What the shop would not take as it was is mended by this one.
  const rest = before.filter((it) => it.step !== step || it.by !== atWork() || it.refused === null);
  keep(jobNumber(), before, [...rest, queued(step, fields, before)]);
  setStamp(section, "key", newKey());
  forgetDraft(section);
  tell("kept");
  openNext(section);
  tell("send");
}

function queued(
  step: SheetStepId,
  { after, key, ...fields }: ReturnType<typeof fieldsIn>,
  before: readonly Queued[],
): Queued {
  const at = Math.max(Date.now(), ...before.map((it) => it.at + 1));
  const stamp = { key: key?.[0] ?? newKey(), after: Number(after?.[0] ?? 0), by: atWork(), at };
  return { ...stamp, step, fields, clash: null, refused: null };
}

const newKey = (): string =>
  [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16).padStart(2, "0")).join("");

/** The next step that wants something stands open and in sight. */
function openNext(from: HTMLDetailsElement): void {
  const all = sections();
  // Of one that was sent it is told with the next page how it stands now.
  const wants = (section: HTMLElement) =>
    !["done", "skipped"].includes(section.dataset["standing"] ?? "") &&
    !("sent" in section.dataset) &&
    !isOnItsWay(jobNumber(), stepOf(section));
  const next = all.slice(all.indexOf(from) + 1).find(wants) ?? all.find(wants);
  from.open = false;
  if (next === undefined) {
    document.querySelector("[data-standing-text]")?.scrollIntoView({ block: "center" });
    return;
  }
  next.open = true;
  next.querySelector("summary")?.focus({ preventScroll: true });
  next.scrollIntoView({ block: "start" });
}

function showLacks(form: HTMLFormElement, lacks: readonly string[]): void {
  form.querySelector("[data-lacks]")?.remove();
  if (lacks.length === 0) return;
  const problem = element(
    "div",
    element("p", SHEET.mend),
    element("ul", ...lacks.map((name) => element("li", mendField(name)))),
  );
  problem.className = "problem";
  problem.dataset["lacks"] = "";
  problem.setAttribute("role", "alert");
  form.prepend(problem);
  const [first = ""] = lacks;
  [...form.elements]
    .find((it): it is HTMLElement => it instanceof HTMLElement && it.getAttribute("name") === first)
    ?.focus();
  say("");
}
