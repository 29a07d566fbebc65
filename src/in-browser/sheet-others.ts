import { type Queued, takeOver } from "#shared/job/sheet-queue.ts";
import { UNSENT } from "#shared/messages/sheet-page-words.ts";
import { element } from "#src/in-browser/element.ts";
import { tell } from "#src/in-browser/sheet-news.ts";
import { atWork, jobNumber } from "#src/in-browser/sheet-place.ts";
import { keep, kept } from "#src/in-browser/sheet-store.ts";

/** An entry that somebody else wrote on this device: taken over under the present name, or left until they sign in. */
export function otherChoice(section: HTMLDetailsElement, { step, by: from }: Queued): HTMLElement {
  const send = button(UNSENT.sendAsMine, () => {
    const before = kept(jobNumber());
    keep(jobNumber(), before, takeOver(before, step, { from, by: atWork() }));
    tell("kept");
    tell("send");
  });
  const leave = button(UNSENT.leaveFor(from), () => {
    section.open = false;
    section.querySelector("summary")?.focus();
  });
  const choices = element("p", send, leave);
  choices.className = "actions";
  return choices;
}

function button(words: string, does: () => void): HTMLButtonElement {
  const made = element("button", words);
  made.type = "button";
  made.onclick = does;
  return made;
}
