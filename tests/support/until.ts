import { setTimeout as pause } from "node:timers/promises";

const LOOK_EVERY_MS = 25;

/** Waits until it is so; throws where it is not so in time. */
export async function until(isSo: () => boolean | Promise<boolean>, patienceMs = 10_000): Promise<void> {
  const giveUpAt = Date.now() + patienceMs;
  while (!(await isSo())) {
    if (Date.now() > giveUpAt) throw new Error(`Not so within ${patienceMs} ms: ${isSo}`);
    await pause(LOOK_EVERY_MS);
  }
}
