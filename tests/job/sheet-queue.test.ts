import fc from "fast-check";
import { expect, it } from "vitest";
import type { SheetStepId, StoredEntry } from "#shared/job/sheet-entry.ts";
import {
  acknowledged,
  clashed,
  keepMine,
  keepTheirs,
  nextToSend,
  type Queued,
  refused,
} from "#shared/job/sheet-queue.ts";

const STEPS = ["inspect", "screws", "impeller"] as const satisfies readonly SheetStepId[];

/** A sheet that takes entries as the ledger does: only after its newest one, and each key once. */
class PlainSheet {
  readonly written: { step: SheetStepId; key: string }[] = [];

  versionOf = (step: SheetStepId) => this.written.filter((it) => it.step === step).length;

  write(step: SheetStepId, after: number, key: string): number | "clash" {
    const earlier = this.written.findIndex((it) => it.key === key);
    if (earlier >= 0) return this.written.slice(0, earlier + 1).filter((it) => it.step === step).length;
    if (this.versionOf(step) !== after) return "clash";
    this.written.push({ step, key });
    return this.versionOf(step);
  }

  newest = (step: SheetStepId): StoredEntry => ({
    step,
    version: this.versionOf(step),
    at: 0,
    by: "Somebody else",
    entry: { kind: "done", note: null },
  });
}

type Move =
  | { readonly does: "write" | "other"; readonly step: SheetStepId }
  | { readonly does: "send" | "lost-answer" }
  | { readonly does: "mine" | "theirs"; readonly step: SheetStepId };
const step = fc.constantFrom(...STEPS);
const anyMove: fc.Arbitrary<Move> = fc.oneof(
  fc.record({ does: fc.constantFrom("write" as const, "other" as const, "mine" as const, "theirs" as const), step }),
  fc.record({ does: fc.constantFrom("send" as const, "lost-answer" as const) }),
);

it("whatever happens, an entry is with the shop once, or on the device, or given up by its writer; each step's in order", () => {
  fc.assert(
    fc.property(fc.array(anyMove, { maxLength: 60 }), (moves) => {
      const shop = new PlainSheet();
      const seen = new Map<SheetStepId, number>();
      let queue: readonly Queued[] = [];
      const mine: { step: SheetStepId; key: string }[] = [];
      const givenUp = new Set<string>();
      moves.forEach((move, at) => {
        const key = `key-${at}`;
        if (move.does === "write") {
          mine.push({ step: move.step, key });
          queue = [
            ...queue,
            { key, step: move.step, after: seen.get(move.step) ?? 0, fields: {}, at, clash: null, refused: null },
          ];
        } else if (move.does === "other") shop.write(move.step, shop.versionOf(move.step), `other-${at}`);
        else if (move.does === "mine") queue = keepMine(queue, move.step);
        else if (move.does === "theirs") {
          const gone = queue.filter(
            (it) => it.step === move.step && queue.some((one) => one.clash && one.step === move.step),
          );
          for (const it of gone) givenUp.add(it.key);
          if (gone.length > 0) {
            queue = keepTheirs(queue, move.step);
            seen.set(move.step, shop.versionOf(move.step));
          }
        } else {
          const next = nextToSend(queue);
          if (next === null) return;
          const answer = shop.write(next.step, next.after, next.key);
          if (move.does === "lost-answer") return;
          if (answer === "clash") queue = clashed(queue, next.key, shop.newest(next.step));
          else {
            queue = acknowledged(queue, next.key, answer);
            seen.set(next.step, Math.max(seen.get(next.step) ?? 0, answer));
          }
        }
      });
      const keys = shop.written.map((it) => it.key);
      expect(new Set(keys).size).toBe(keys.length);
      for (const { key } of mine) {
        const places = [keys.includes(key), queue.some((it) => it.key === key), givenUp.has(key)];
        expect(places.some(Boolean), key).toBe(true);
      }
      for (const one of STEPS) {
        const written = keys.filter((key) => mine.some((it) => it.key === key && it.step === one));
        const inOrder = mine.filter((it) => it.step === one && written.includes(it.key)).map((it) => it.key);
        expect(written).toEqual(inOrder);
      }
    }),
  );
});

const queued = (key: string, step: SheetStepId, at: number, change: Partial<Queued> = {}): Queued => ({
  key,
  step,
  after: 0,
  fields: {},
  at,
  clash: null,
  refused: null,
  ...change,
});

it("a step that is held up holds up no other", () => {
  const queue = [queued("a", "inspect", 1), queued("b", "screws", 2)];
  expect(nextToSend(queue)?.key).toBe("a");
  expect(nextToSend(refused(queue, "a", "Not on the bench"))?.key).toBe("b");
});

it("what was written on this device after an entry that is sent follows it", () => {
  const queue = acknowledged([queued("a", "inspect", 1), queued("b", "inspect", 2), queued("c", "screws", 3)], "a", 4);
  expect(queue).toEqual([queued("b", "inspect", 2, { after: 4 }), queued("c", "screws", 3)]);
});
