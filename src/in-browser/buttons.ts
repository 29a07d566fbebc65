import { SAID } from "#shared/messages/owner-words.ts";
import { onShown } from "#src/in-browser/page-swap.ts";
import { say } from "#src/in-browser/say.ts";

/** Buttons that only make sense with a script are hidden until it is there. */
export function bringButtons(): void {
  onShown((main) => {
    for (const button of main.querySelectorAll("[data-print], [data-copy-link]")) button.removeAttribute("hidden");
    for (const field of main.querySelectorAll<HTMLInputElement>("[data-copy]")) field.onfocus = () => field.select();
  });
}

/** @returns whether the click was on one of them */
export function pressed(target: Element): boolean {
  if (target.closest("[data-print]") !== null) {
    print();
    return true;
  }
  const link = target.closest<HTMLElement>("[data-copy-link]")?.dataset["copyLink"];
  if (link === undefined) return false;
  navigator.clipboard.writeText(link).then(
    () => say(SAID.copied),
    () => say(SAID.cannotCopy),
  );
  return true;
}
