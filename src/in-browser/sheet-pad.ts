import { PAD } from "#shared/messages/sheet-page-words.ts";
import { element } from "#src/in-browser/element.ts";
import { sectionAround } from "#src/in-browser/sheet-place.ts";

const KEYS = ["7", "8", "9", "erase", "4", "5", "6", ".", "1", "2", "3", "next", "0"] as const;
type Key = (typeof KEYS)[number];

let into: HTMLInputElement | null = null;

/** Big keys for a gloved hand, in sight while a number is asked for. */
export function bringPad(): void {
  // They go only when the finger has left: without them the page is shorter, and the button would slip from under it.
  for (const done of ["click", "keyup"]) document.addEventListener(done, showPads);
  document.addEventListener("input", keepInSight);
  document.addEventListener("focusin", ({ target }) => {
    if (!(target instanceof HTMLElement) || target.closest("[data-pad]") !== null) return;
    into = target instanceof HTMLInputElement && "number" in target.dataset ? target : null;
    if (into !== null) showPads();
    keepInSight();
    // A finger gets our keys in place of the system's, which would cover the dial.
    if (into !== null && sectionAround(into) !== null && matchMedia("(pointer: coarse)").matches)
      into.inputMode = "none";
  });
}

/** The keys take room at the bottom, and what is drawn above pushes down: the number comes up from behind them. */
const keepInSight = (): void => into?.scrollIntoView({ block: "nearest" });

function showPads(): void {
  if (into !== document.activeElement) into = null;
  for (const pad of document.querySelectorAll<HTMLElement>("[data-pad]")) {
    pad.hidden = into === null || sectionAround(pad) !== sectionAround(into);
    if (!pad.hidden && pad.childElementCount === 0) fillPad(pad);
  }
}

function fillPad(pad: HTMLElement): void {
  pad.setAttribute("role", "group");
  pad.setAttribute("aria-label", PAD.title);
  pad.append(
    ...KEYS.map((key) => {
      const made = element("button", key === "next" ? PAD.next : key === "erase" ? "⌫" : key);
      made.type = "button";
      made.className = key === "next" ? "next" : key === "0" ? "quiet zero" : "quiet";
      if (key === "erase") made.setAttribute("aria-label", PAD.erase);
      if (key === ".") made.setAttribute("aria-label", PAD.point);
      // The number keeps the focus, so that it can be read while it is typed.
      made.onpointerdown = (event) => event.preventDefault();
      made.onclick = () => press(key);
      return made;
    }),
  );
}

function press(key: Key): void {
  if (into === null) return;
  if (key === "next") {
    goOn(into);
    return;
  }
  into.value = key === "erase" ? into.value.slice(0, -1) : `${into.value}${key}`;
  into.dispatchEvent(new Event("input", { bubbles: true }));
}

/** To the next number of the step that can be seen; from the last one to the button that writes it down. */
function goOn(from: HTMLInputElement): void {
  const fields = [...(from.form?.querySelectorAll<HTMLInputElement>("[data-number]") ?? [])].filter((it) =>
    it.checkVisibility(),
  );
  const next = fields[fields.indexOf(from) + 1];
  (next ?? from.form?.querySelector<HTMLElement>("button[value=keep], button[type=submit]"))?.focus();
}
