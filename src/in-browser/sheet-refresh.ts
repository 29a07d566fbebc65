import { type Queued, writtenBy } from "#shared/job/sheet-queue.ts";
import { isDirty } from "#src/in-browser/sheet-draft.ts";
import { tell } from "#src/in-browser/sheet-news.ts";
import { atWork, jobNumber, sectionOf, sections, stepOf, steps } from "#src/in-browser/sheet-place.ts";
import { kept } from "#src/in-browser/sheet-store.ts";
import { untilUntouched } from "#src/in-browser/sheet-touch.ts";

/** Brings the page up to what the shop has now. A form that is being filled in, or waits to be sent, stays as it is. */
export async function refreshSheet(): Promise<void> {
  const page = await fetchPage();
  await untilUntouched();
  const [here, there] = [steps(), page?.querySelector<HTMLElement>("[data-sheet]") ?? null];
  if (page === null || here === null || there === null) return;
  const queue = kept(jobNumber());
  const waiting = stepsOf(queue);
  const ownWaiting = stepsOf(writtenBy(queue, atWork()));
  const open = document.querySelector<HTMLElement>("details[data-step][open]")?.dataset["step"];
  let before: HTMLElement | null = null;
  for (const fresh of there.querySelectorAll<HTMLDetailsElement>("details[data-step]")) {
    const old: HTMLDetailsElement | null = sectionOf(stepOf(fresh));
    if (old === null || !(isDirty(old) || ownWaiting.has(stepOf(fresh)) || isSame(old, fresh))) {
      const plain = plainText(fresh);
      fresh.open = stepOf(fresh) === open;
      const came = document.adoptNode(fresh);
      cameAs.set(came, plain);
      // In its place, so that nothing beside it moves and whoever types elsewhere keeps the focus.
      if (old !== null) old.replaceWith(came);
      else if (before !== null) before.after(came);
      else here.prepend(came);
    }
    before = sectionOf(stepOf(fresh));
  }
  const asked = new Set(JSON.parse(there.dataset["steps"] ?? "[]") as readonly string[]);
  for (const section of sections()) if (!asked.has(stepOf(section)) && !waiting.has(stepOf(section))) section.remove();
  for (const name of ["plan", "steps", "staff"]) here.dataset[name] = there.dataset[name] ?? "";
  for (const part of ["[data-aim]", "[data-standing-text]", ".paper"]) {
    const [old, fresh] = [document.querySelector(part), page.querySelector(part)];
    if (old !== null && fresh !== null) old.replaceWith(document.adoptNode(fresh));
  }
  tell("shown");
}

const stepsOf = (queue: readonly Queued[]) => new Set<string>(queue.map(({ step }) => step));

/** How each step came from the shop, before anything was typed or drawn into it. */
const cameAs = new WeakMap<HTMLElement, string>();

/** Called first of all: what has not changed since is left alone, so that no touch falls on something that goes away. */
export function noteHowStepsCame(): void {
  for (const section of sections()) cameAs.set(section, plainText(section));
}

const isSame = (old: HTMLElement, fresh: HTMLElement): boolean => cameAs.get(old) === plainText(fresh);

/** Which step is open, and a form's own key, tell nothing of its content. */
function plainText(section: HTMLElement): string {
  const copy = section.cloneNode(true);
  if (!(copy instanceof HTMLElement)) return "";
  copy.removeAttribute("open");
  copy.querySelector('[name="key"]')?.remove();
  return copy.outerHTML;
}

async function fetchPage(): Promise<Document | null> {
  try {
    const response = await fetch(location.pathname, { cache: "no-store" });
    return response.ok ? new DOMParser().parseFromString(await response.text(), "text/html") : null;
  } catch {
    return null;
  }
}
