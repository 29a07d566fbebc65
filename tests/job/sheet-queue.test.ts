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
  takeOver,
} from "#shared/job/sheet-queue.ts";

const STEPS = ["inspect", "screws", "impeller"] as const satisfies readonly SheetStepId[];

/** A sheet that takes entries as the ledger does: only after its newest one, and each key once. */
class PlainSheet {
  readonly written: { step: SheetStepId; key: string; by: string }[] = [];

  versionOf = (step: SheetStepId) => this.written.filter((it) => it.step === step).length;

  write(step: SheetStepId, after: number, key: string, by = "Somebody else"): number | "clash" {
    const earlier = this.written.findIndex((it) => it.key === key);
    if (earlier >= 0) return this.written.slice(0, earlier + 1).filter((it) => it.step === step).length;
    if (this.versionOf(step) !== after) return "clash";
    this.written.push({ step, key, by });
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
  | { readonly does: "send" | "lost-answer" | "hand-over" }
  | { readonly does: "mine" | "theirs"; readonly step: SheetStepId };
const step = fc.constantFrom(...STEPS);
const anyMove: fc.Arbitrary<Move> = fc.oneof(
  fc.record({ does: fc.constantFrom("write" as const, "other" as const, "mine" as const, "theirs" as const), step }),
  fc.record({ does: fc.constantFrom("send" as const, "lost-answer" as const, "hand-over" as const) }),
);

it("whatever happens, an entry is with the shop once, or on the device, or given up by its writer; each step's in order, each credited to who wrote it", () => {
  fc.assert(
    fc.property(fc.array(anyMove, { maxLength: 60 }), (moves) => {
      const shop = new PlainSheet();
      const seen = new Map<SheetStepId, number>();
      let queue: readonly Queued[] = [];
      const mine: { step: SheetStepId; key: string; by: string }[] = [];
      let atWork = "Sedge Hallow";
      const givenUp = new Set<string>();
      moves.forEach((move, at) => {
        const key = `key-${at}`;
        if (move.does === "write") {
          mine.push({ step: move.step, key, by: atWork });
          queue = [...queue, queued(key, move.step, at, { after: seen.get(move.step) ?? 0, by: atWork })];
        } else if (move.does === "other") shop.write(move.step, shop.versionOf(move.step), `other-${at}`);
        else if (move.does === "mine") queue = keepMine(queue, move.step, atWork);
        else if (move.does === "hand-over") atWork = atWork === "Tansy Marl" ? "Sedge Hallow" : "Tansy Marl";
        else if (move.does === "theirs") {
          const gone = queue.filter(
            (it) =>
              it.step === move.step &&
              it.by === atWork &&
              queue.some((one) => one.clash && one.step === move.step && one.by === atWork),
          );
          for (const it of gone) givenUp.add(it.key);
          if (gone.length > 0) {
            queue = keepTheirs(queue, move.step, atWork);
            seen.set(move.step, shop.versionOf(move.step));
          }
        } else {
          const next = nextToSend(queue, atWork);
          if (next === null) return;
          const answer = shop.write(next.step, next.after, next.key, atWork);
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
      for (const it of shop.written) {
        expect(it.by, it.key).toBe(mine.find(({ key }) => key === it.key)?.by ?? "Somebody else");
      }
      for (const [one, by] of STEPS.flatMap((it) => [[it, "Sedge Hallow"] as const, [it, "Tansy Marl"] as const])) {
        const written = keys.filter((key) => mine.some((it) => it.key === key && it.step === one && it.by === by));
        const inOrder = mine.filter((it) => it.step === one && written.includes(it.key) && it.by === by);
        expect(written).toEqual(inOrder.map((it) => it.key));
      }
    }),
  );
});

const queued = (key: string, step: SheetStepId, at: number, change: Partial<Queued> = {}): Queued => ({
  key,
  step,
  after: 0,
  fields: {},
  by: "Sedge Hallow",
  at,
  clash: null,
  refused: null,
  ...change,
});

it("a step that is held up holds up no other", () => {
  const queue = [queued("a", "inspect", 1), queued("b", "screws", 2)];
  expect(nextToSend(queue, "Sedge Hallow")?.key).toBe("a");
  expect(nextToSend(refused(queue, "a", "Not on the bench"), "Sedge Hallow")?.key).toBe("b");
});

it("what was written on this device after an entry that is sent follows it", () => {
  const queue = acknowledged([queued("a", "inspect", 1), queued("b", "inspect", 2), queued("c", "screws", 3)], "a", 4);
  expect(queue).toEqual([queued("b", "inspect", 2, { after: 4 }), queued("c", "screws", 3)]);
});

it("what somebody else wrote on this device waits for them, holds up nobody, and is neither lost nor written over unseen", () => {
  const queue = [queued("a", "screws", 1, { by: "Tansy Marl" }), queued("b", "screws", 2)];
  expect(nextToSend(queue, "Sedge Hallow")?.key).toBe("b");
  const left = acknowledged(queue, "b", 1);
  expect(left).toEqual([queued("a", "screws", 1, { by: "Tansy Marl" })]);
  expect(nextToSend(left, "Sedge Hallow")).toBeNull();
  expect(nextToSend(left, "Tansy Marl")?.key).toBe("a");
  expect(keepTheirs(queue, "screws", "Sedge Hallow")).toEqual(left);
  expect(keepMine(left, "screws", "Sedge Hallow")).toEqual(left);
});

it("what is taken over is sent under the present name, that step's and that writer's alone", () => {
  const queue = [
    queued("a", "screws", 1, { by: "Tansy Marl" }),
    queued("b", "impeller", 2, { by: "Tansy Marl" }),
    queued("c", "screws", 3, { by: "Reed Fenn" }),
  ];
  const taken = takeOver(queue, "screws", { from: "Tansy Marl", by: "Sedge Hallow" });
  expect(taken.map(({ by }) => by)).toEqual(["Sedge Hallow", "Tansy Marl", "Reed Fenn"]);
  expect(nextToSend(taken, "Sedge Hallow")?.key).toBe("a");
});
