import type { SheetEntry } from "#shared/job/sheet-entry.ts";
import { readEntry } from "#shared/job/sheet-fields.ts";
import { keepMine, keepTheirs, type Queued, writtenBy } from "#shared/job/sheet-queue.ts";
import { entryText } from "#shared/messages/sheet-entry-words.ts";
import { CLASH, UNSENT } from "#shared/messages/sheet-page-words.ts";
import { element } from "#src/in-browser/element.ts";
import { forgetDraft } from "#src/in-browser/sheet-draft.ts";
import { on, tell } from "#src/in-browser/sheet-news.ts";
import { otherChoice } from "#src/in-browser/sheet-others.ts";
import { atWork, jobNumber, kindOf, sectionOf, sections, stepOf } from "#src/in-browser/sheet-place.ts";
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
    const here = queue.filter(({ step }) => step === stepOf(section));
    section.toggleAttribute("data-unsent", here.length > 0);
    markOwn(section, writtenBy(here, atWork()));
    markOthers(section, here);
  }
}

function markOwn(section: HTMLDetailsElement, own: readonly Queued[]): void {
  const newest = own.at(-1);
  if (newest === undefined) return;
  const answer = section.querySelector("[data-answer]");
  if (answer !== null) answer.textContent = textOf(section, newest);
  const clash = own.find(({ clash }) => clash !== null)?.clash ?? null;
  const refusal = own.find(({ refused }) => refused !== null)?.refused ?? null;
  const says = clash !== null ? UNSENT.clash : refusal !== null ? UNSENT.refused(refusal) : UNSENT.pending;
  section.querySelector("summary")?.append(marked(element("span", says), "unsent"));
  const ask = clash !== null ? choice(section, newest, clash) : refusal !== null ? dropOrSend(newest) : null;
  if (ask === null) return;
  section.querySelector(".step-body")?.prepend(ask);
  section.open = true;
}

/** What somebody else wrote here, who is not signed in: whoever is at work may go on beside it. */
function markOthers(section: HTMLDetailsElement, here: readonly Queued[]): void {
  const theirs = here.findLast(({ by }) => by !== atWork());
  if (theirs === undefined) return;
  const says = UNSENT.refused(UNSENT.otherWriter(theirs.by));
  section.querySelector("summary")?.append(marked(element("span", says), "unsent"));
  const ask = element("div", element("p", textOf(section, theirs)), otherChoice(section, theirs));
  section.querySelector(".step-body")?.prepend(marked(ask, "notice"));
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

function button(words: string, { step, by }: Queued): HTMLButtonElement {
  const made = element("button", words);
  made.type = "button";
  made.onclick = () => {
    const before = kept(jobNumber());
    const isMine = words === CLASH.keepMine || words === UNSENT.again;
    keep(jobNumber(), before, isMine ? keepMine(before, step, by) : keepTheirs(before, step, by));
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
