let isTouched = false;
let waiting: (() => void)[] = [];

/** Called once: knows from then on whether a finger is on the page. */
export function watchTouch(): void {
  document.addEventListener("pointerdown", () => setTouched(true), true);
  // What the touch does comes right after it.
  for (const end of ["pointerup", "pointercancel"]) {
    document.addEventListener(end, () => setTimeout(() => setTouched(false)), true);
  }
}

/** A button that is replaced while it is pressed would never know: nothing on the page changes under a finger. */
export const untilUntouched = (): Promise<void> =>
  isTouched ? new Promise((resolve) => waiting.push(resolve)) : Promise.resolve();

function setTouched(touched: boolean): void {
  isTouched = touched;
  if (touched) return;
  for (const go of waiting) go();
  waiting = [];
}
