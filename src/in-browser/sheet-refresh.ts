import { isDirty } from "#src/in-browser/sheet-draft.ts";
import { tell } from "#src/in-browser/sheet-news.ts";
import { jobNumber, sectionOf, stepOf, steps } from "#src/in-browser/sheet-place.ts";
import { kept } from "#src/in-browser/sheet-store.ts";

/** Brings the page up to what the shop has now. A form that is being filled in, or waits to be sent, stays as it is. */
export async function refreshSheet(): Promise<void> {
  const page = await fetchPage();
  const [here, there] = [steps(), page?.querySelector<HTMLElement>("[data-sheet]") ?? null];
  if (page === null || here === null || there === null) return;
  const waiting = new Set<string>(kept(jobNumber()).map(({ step }) => step));
  const open = document.querySelector<HTMLElement>("details[data-step][open]")?.dataset["step"];
  const next = [...there.querySelectorAll<HTMLDetailsElement>("details[data-step]")].map((fresh) => {
    const old = sectionOf(stepOf(fresh));
    if (old !== null && (isDirty(old) || waiting.has(stepOf(fresh)))) return old;
    const came = document.adoptNode(fresh);
    came.open = stepOf(came) === open;
    return came;
  });
  here.replaceChildren(...next);
  for (const name of ["plan", "steps"]) here.dataset[name] = there.dataset[name] ?? "";
  for (const part of ["[data-aim]", "[data-standing-text]", ".paper"]) {
    const [old, fresh] = [document.querySelector(part), page.querySelector(part)];
    if (old !== null && fresh !== null) old.replaceWith(document.adoptNode(fresh));
  }
  tell("shown");
}

async function fetchPage(): Promise<Document | null> {
  try {
    const response = await fetch(location.pathname, { cache: "no-store" });
    return response.ok ? new DOMParser().parseFromString(await response.text(), "text/html") : null;
  } catch {
    return null;
  }
}
