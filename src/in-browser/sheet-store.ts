import type { SheetStepId } from "#shared/job/sheet-entry.ts";
import { inOrder, type Queued, writtenBy } from "#shared/job/sheet-queue.ts";
import { atWork } from "#src/in-browser/sheet-place.ts";

/** Each entry lies under a name of its own, so that two tabs never write over one another's. */
const prefix = (number: string): string => `sheet|${number}|`;

/** What this device keeps of a job's sheet, oldest first. */
export const kept = (number: string): readonly Queued[] =>
  inOrder(namesOf(number).map((name) => JSON.parse(localStorage.getItem(name) ?? "null") as Queued));

/** Puts a queue in place of what was kept, one entry at a time: what another tab has added meanwhile stays. */
export function keep(number: string, before: readonly Queued[], after: readonly Queued[]): void {
  for (const it of after) {
    if (!before.includes(it)) localStorage.setItem(`${prefix(number)}${it.key}`, JSON.stringify(it));
  }
  const still = new Set(after.map(({ key }) => key));
  for (const { key } of before) if (!still.has(key)) localStorage.removeItem(`${prefix(number)}${key}`);
}

/** The step has an entry of whoever is at work that is on its way, so it wants nothing more. */
export const isOnItsWay = (number: string, step: SheetStepId): boolean =>
  writtenBy(kept(number), atWork()).some((it) => it.step === step && it.clash === null && it.refused === null);

/** Jobs of which this device still keeps something, this page's or another's. */
export const jobsKept = (): readonly string[] => [
  ...new Set(Object.keys(localStorage).flatMap((name) => /^sheet\|(\w+)\|/.exec(name)?.[1] ?? [])),
];

export const isKeptName = (name: string | null, number: string): boolean => name?.startsWith(prefix(number)) === true;

const namesOf = (number: string): readonly string[] =>
  Object.keys(localStorage).filter((name) => name.startsWith(prefix(number)));
