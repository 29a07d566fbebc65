import type { SheetStepId, StoredEntry } from "#shared/job/sheet-entry.ts";
import type { FormFields } from "#shared/job/sheet-fields.ts";

/** An entry on its way to the shop. The device keeps it until the shop has it, or the writer gives it up. */
export type Queued = {
  readonly key: string;
  readonly step: SheetStepId;
  /** The version that the writer had seen, or that an earlier entry of this queue has come to have since. */
  readonly after: number;
  readonly fields: FormFields;
  /** Who was at work when it was written, by name. */
  readonly by: string;
  /** When it was written, by the device's clock; later ones come after earlier ones. */
  readonly at: number;
  /** The entry that somebody else wrote meanwhile; the writer has to choose. */
  readonly clash: StoredEntry | null;
  /** Why the shop does not take it as it is. */
  readonly refused: string | null;
};

/** Oldest first. */
export const inOrder = (queue: readonly Queued[]): readonly Queued[] =>
  queue.toSorted((one, other) => one.at - other.at || one.key.localeCompare(other.key));

/** A device may be shared: what somebody else wrote on it waits for them, and holds up nobody. */
export const writtenBy = (queue: readonly Queued[], name: string): readonly Queued[] =>
  queue.filter(({ by }) => by === name);

/** The next to be sent: the oldest of whoever is at work, whose step nothing holds up. Another step goes on meanwhile. */
export function nextToSend(queue: readonly Queued[], atWork: string): Queued | null {
  const own = writtenBy(queue, atWork);
  const held = new Set(own.filter(({ clash, refused }) => clash !== null || refused !== null).map(({ step }) => step));
  return inOrder(own).find(({ step }) => !held.has(step)) ?? null;
}

/** It is with the shop: whatever this device wrote after it at that step was written knowing it; what came before was not. */
export const acknowledged = (queue: readonly Queued[], key: string, version: number): readonly Queued[] => {
  const ordered = inOrder(queue);
  const place = ordered.findIndex((it) => it.key === key);
  const sent = ordered[place];
  const later = new Set(ordered.slice(place + 1).filter(({ step }) => step === sent?.step));
  return queue
    .filter((it) => it !== sent)
    .map((it) => (later.has(it) ? { ...it, after: Math.max(it.after, version) } : it));
};

export const clashed = (queue: readonly Queued[], key: string, newer: StoredEntry): readonly Queued[] =>
  queue.map((it) => (it.key === key ? { ...it, clash: newer } : it));

export const refused = (queue: readonly Queued[], key: string, why: string): readonly Queued[] =>
  queue.map((it) => (it.key === key ? { ...it, refused: why } : it));

/** The writer has seen the other entry and keeps to their own: it is written after it. */
export function keepMine(queue: readonly Queued[], step: SheetStepId, by: string): readonly Queued[] {
  const newer = queue.find((it) => it.step === step && it.by === by && it.clash !== null)?.clash;
  return queue.map((it) =>
    it.step === step && it.by === by ? { ...it, after: newer?.version ?? it.after, clash: null, refused: null } : it,
  );
}

/** The writer gives up what this device holds of theirs at a step. */
export const keepTheirs = (queue: readonly Queued[], step: SheetStepId, by: string): readonly Queued[] =>
  queue.filter((it) => it.step !== step || it.by !== by);

/** Whoever is at work answers for what somebody else wrote at a step. */
export const takeOver = (
  queue: readonly Queued[],
  step: SheetStepId,
  { from, by }: { readonly from: string; readonly by: string },
): readonly Queued[] => queue.map((it) => (it.step === step && it.by === from ? { ...it, by } : it));
