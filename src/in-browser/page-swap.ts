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
 * Fetches a page and puts its main part in place, without a reload. Nothing changes where the network is away or
 * the site refuses: what was typed stays.
 * @returns whether the page came, and as asked
 */
export async function swap(url: string, how: RequestInit & { readonly push?: boolean } = {}): Promise<boolean> {
  const { push = true, ...request } = how;
  const isForm = request.method === "POST";
  const busy = main();
  busy.setAttribute("aria-busy", "true");
  try {
    const response = await fetch(url, request);
    const page = new DOMParser().parseFromString(await response.text(), "text/html");
    const next = page.getElementById("main");
    // The answer to a form stands at the form's own address, which cannot be opened, unless it sent us on.
    const address = isForm && !response.redirected ? location.href : response.url;
    if (next !== null) show(next, page.title, { address, push });
    else if (isForm) say((page.querySelector("main p") ?? page.body).textContent);
    else location.assign(address);
    return response.ok;
  } catch {
    say(SAID.nothingSent);
    return false;
  } finally {
    busy.removeAttribute("aria-busy");
  }
}

let standing = location.pathname;

/** False for a step in the history that only leads to another part of the same page. */
export const isElsewhere = (): boolean => location.pathname !== standing;

/** What stands there now is at this address: a step in the history, or the present one corrected. */
export function noteAddress(address: string, push: boolean): void {
  if (push && new URL(address, location.href).href !== location.href) history.pushState(null, "", address);
  else history.replaceState(null, "", address);
  standing = location.pathname;
}

type Place = { readonly address: string; readonly push: boolean };

function show(next: HTMLElement, title: string, { address, push }: Place): void {
  say("");
  main().replaceWith(document.adoptNode(next));
  noteAddress(address, push);
  document.title = title;
  scrollTo(0, 0);
  focusHeading();
  shown();
}

/** A question that came to stand in its place names the window, too. */
export function entitle(place: HTMLElement): void {
  document.title = `${place.querySelector("h1")?.textContent ?? ""} · ${document.title.split(" · ").at(-1) ?? ""}`;
  focusHeading();
}

/** After a step that the owner took, the new heading is where reading goes on. */
function focusHeading(): void {
  (main().querySelector("[role=alert]:not([hidden])") ?? main().querySelector("h1"))?.scrollIntoView({
    block: "nearest",
  });
  main().querySelector("h1")?.focus({ preventScroll: true });
}
