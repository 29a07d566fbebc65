import { SAID } from "#shared/messages/owner-words.ts";
import { say } from "#src/in-browser/say.ts";

/** Run on every page that has just come to stand in `main`, the first one too. */
type Shown = (main: HTMLElement) => void;
const whenShown: Shown[] = [];

export function onShown(hook: Shown): void {
  whenShown.push(hook);
}

export const main = (): HTMLElement => document.getElementById("main") ?? document.body;

/** The page that stands there now is new: tell everyone who listens. */
export function shown(): void {
  for (const hook of whenShown) hook(main());
}

/**
 * Fetches a page and puts its main part in place, without a reload. Nothing changes where the network is away:
 * what was typed stays.
 * @returns whether the page came
 */
export async function swap(url: string, how: RequestInit & { readonly push?: boolean } = {}): Promise<boolean> {
  const { push = true, ...request } = how;
  const busy = main();
  busy.setAttribute("aria-busy", "true");
  try {
    const response = await fetch(url, request);
    const page = new DOMParser().parseFromString(await response.text(), "text/html");
    const next = page.getElementById("main");
    if (next === null) location.assign(response.url);
    else show(next, page.title, push ? response.url : null);
    return true;
  } catch {
    say(SAID.nothingSent);
    return false;
  } finally {
    busy.removeAttribute("aria-busy");
  }
}

function show(next: HTMLElement, title: string, address: string | null): void {
  say("");
  main().replaceWith(document.adoptNode(next));
  if (address !== null) history.pushState(null, "", address);
  document.title = title;
  scrollTo(0, 0);
  focusHeading();
  shown();
}

/** After a step that the owner took, the new heading is where reading goes on. */
export function focusHeading(): void {
  (main().querySelector("[role=alert]:not([hidden])") ?? main().querySelector("h1"))?.scrollIntoView({
    block: "nearest",
  });
  main().querySelector("h1")?.focus({ preventScroll: true });
}
