import type { SheetEntry } from "#shared/job/sheet-entry.ts";
import { readEntry } from "#shared/job/sheet-fields.ts";
import { keepMine, keepTheirs, type Queued } from "#shared/job/sheet-queue.ts";
import { entryText } from "#shared/messages/sheet-entry-words.ts";
import { CLASH, UNSENT } from "#shared/messages/sheet-page-words.ts";
import { element } from "#src/in-browser/element.ts";
import { forgetDraft } from "#src/in-browser/sheet-draft.ts";
import { on, tell } from "#src/in-browser/sheet-news.ts";
import { jobNumber, kindOf, sectionOf, sections, stepOf } from "#src/in-browser/sheet-place.ts";
import { keep, kept } from "#src/in-browser/sheet-store.ts";

/** Marks each step of which this device keeps an entry, and asks where two entries stand against each other. */
export function bringMarks(): void {
  on("kept", showUnsent);
  on("shown", showUnsent);
  showUnsent();
}

function showUnsent(): void {
  for (const mark of document.querySelectorAll("[data-mark]")) mark.remove();
  const queue = kept(jobNumber());
  for (const section of sections()) {
    const newest = queue.findLast(({ step }) => step === stepOf(section));
    section.toggleAttribute("data-unsent", newest !== undefined);
    if (newest !== undefined) mark(section, newest, queue);
  }
}

function mark(section: HTMLDetailsElement, newest: Queued, queue: readonly Queued[]): void {
  const answer = section.querySelector("[data-answer]");
  if (answer !== null) answer.textContent = textOf(section, newest);
  const clash = queue.find(({ step, clash }) => step === newest.step && clash !== null)?.clash ?? null;
  const refusal = queue.find(({ step, refused }) => step === newest.step && refused !== null)?.refused ?? null;
  const says = clash !== null ? UNSENT.clash : refusal !== null ? UNSENT.refused(refusal) : UNSENT.pending;
  section.querySelector("summary")?.append(marked(element("span", says), "unsent"));
  const ask = clash !== null ? choice(section, newest, clash) : refusal !== null ? dropOrSend(newest) : null;
  if (ask === null) return;
  section.querySelector(".step-body")?.prepend(ask);
  section.open = true;
}

function choice(section: HTMLElement, mine: Queued, theirs: NonNullable<Queued["clash"]>): HTMLElement {
  const ask = element(
    "div",
    element("section", element("h3", CLASH.mine), element("p", textOf(section, mine)), button(CLASH.keepMine, mine)),
    element(
      "section",
      element("h3", `${CLASH.theirs}: ${theirs.by}`),
      element("p", entryText(theirs.entry)),
      button(CLASH.keepTheirs, mine),
    ),
  );
  ask.setAttribute("role", "alert");
  return marked(ask, "clash");
}

function dropOrSend(mine: Queued): HTMLElement {
  return marked(element("p", button(UNSENT.again, mine), button(UNSENT.drop, mine)), "actions");
}

function button(words: string, { step }: Queued): HTMLButtonElement {
  const made = element("button", words);
  made.type = "button";
  made.onclick = () => {
    const before = kept(jobNumber());
    const isMine = words === CLASH.keepMine || words === UNSENT.again;
    keep(jobNumber(), before, isMine ? keepMine(before, step) : keepTheirs(before, step));
    // What is typed in the form is the entry that was given up; the other one comes with the page.
    if (!isMine) forgetDraft(sectionOf(step));
    tell("kept");
    tell(isMine ? "send" : "stale");
  };
  return made;
}

function marked<Made extends HTMLElement>(made: Made, name: string): Made {
  made.className = name;
  made.dataset["mark"] = "";
  return made;
}

/** An entry that was never checked may lack something; then its fields are shown as they are. */
function textOf(section: HTMLElement, { fields }: Queued): string {
  try {
    return entryText(readEntry(kindOf(section), fields) as SheetEntry);
  } catch {
    return Object.values(fields).flat().filter(Boolean).join(", ");
  }
}
