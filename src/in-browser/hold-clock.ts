import { SAID } from "#shared/messages/owner-words.ts";
import { onShown } from "#src/in-browser/page-swap.ts";
import { say } from "#src/in-browser/say.ts";

const WARN_MS = 120_000;
let warning = 0;

/** Two minutes before held time runs out the owner is told, and can hold it longer by one touch (WCAG 2.2.1). */
export function watchHold(): void {
  onShown((main) => {
    clearTimeout(warning);
    const until = Number(main.querySelector<HTMLElement>("[data-until]")?.dataset["until"]);
    if (!(until > 0)) return;
    warning = setTimeout(() => say(SAID.twoMinutes), Math.max(0, until - Date.now() - WARN_MS));
  });
}
