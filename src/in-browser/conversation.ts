/** The script of the owner's pages. Every page works without it; with it there is no reload, and no network is needed to go on. */
import { bringButtons, pressed } from "#src/in-browser/buttons.ts";
import { watchHold } from "#src/in-browser/hold-clock.ts";
import { isElsewhere, shown, swap } from "#src/in-browser/page-swap.ts";
import { answer, converse, isLocal, showAddress, startOver } from "#src/in-browser/questions.ts";
import { forgetTyped, keepTyped } from "#src/in-browser/typed.ts";

/** Pages that are swapped in place; all others load as ever. */
const OWN_PAGES = /^\/(intake|verdict|confirm)(\/(?!.*\.ics$)|$)/;

converse();
keepTyped();
bringButtons();
watchHold();
shown();

document.addEventListener("submit", (event) => {
  const form = event.target;
  if (!(form instanceof HTMLFormElement) || form.dataset["plain"] !== undefined) return;
  event.preventDefault();
  if (document.querySelector("[aria-busy]") !== null) return;
  void submit(form, event.submitter);
});

async function submit(form: HTMLFormElement, submitter: HTMLElement | null): Promise<void> {
  if (isLocal(form)) {
    answer(form, submitter);
    return;
  }
  if (form.action.endsWith("/start-over")) return startOver(form);
  const body = new URLSearchParams([...new FormData(form, submitter)].map(([name, value]) => [name, String(value)]));
  const sent = await swap(form.action, { method: "POST", body });
  if (sent && location.href !== form.action) forgetTyped(form);
}

document.addEventListener("click", (event) => {
  const target = event.target instanceof Element ? event.target : null;
  if (target === null || event.ctrlKey || event.metaKey || event.shiftKey) return;
  if (pressed(target)) return;
  const link = target.closest<HTMLAnchorElement>("main a[href]");
  if (link === null || link.origin !== location.origin || link.hash !== "" || !OWN_PAGES.test(link.pathname)) return;
  event.preventDefault();
  if (!showAddress(link.pathname, true)) void swap(link.href);
});

addEventListener("popstate", () => {
  if (isElsewhere() && !showAddress(location.pathname, false)) void swap(location.href, { push: false });
});
