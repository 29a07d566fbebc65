import * as fc from "fast-check";
import { expect } from "vitest";

/** A law that has not met what it must in so many rounds will not by chance alone. */
const MOST_ROUNDS = 8;

/**
 * Tries a law round by round, each with its own seed, until it has met all that it must have met: which of the rare
 * cases one round meets is chance, that the law was tried on all of them is not.
 */
export async function untilMet(
  { seen, mustMeet }: { readonly seen: Set<string>; readonly mustMeet: readonly string[] },
  round: (seed: number) => Promise<void>,
): Promise<void> {
  const first = fc.readConfigureGlobal().seed ?? 0;
  seen.clear();
  for (let nth = 0; nth < MOST_ROUNDS && !mustMeet.every((it) => seen.has(it)); nth += 1) await round(first + nth);
  expect([...seen]).toEqual(expect.arrayContaining([...mustMeet]));
}
