import { expect, it } from "vitest";
import { boardFrom } from "#shared/calendar/board-schema.ts";
import { DEFAULT_CALENDAR } from "#shared/calendar/calendar-settings.ts";
import { boardReader } from "#src/adapters/slot-board.ts";

const NOW = Date.UTC(2027, 2, 1, 15);
const aBoard = (version: number, now = NOW) => boardFrom({ version, now, settings: DEFAULT_CALENDAR, busy: [] });

/** A store that answers one value after another, as copies of different age may. */
function storeOf(...values: readonly unknown[]): KVNamespace {
  const left = [...values];
  return {
    get: async (key: string) => {
      expect(key).toBe("board:main");
      const value = left.shift();
      if (value instanceof Error) throw value;
      return value ?? null;
    },
  } as unknown as KVNamespace;
}

const versionsRead = async (kv: KVNamespace | undefined, times: number) => {
  const read = boardReader(kv, "main");
  const versions: (number | null)[] = [];
  for (let time = 0; time < times; time += 1) versions.push((await read(NOW))?.version ?? null);
  return versions;
};

it("passes over a version lower than one it has seen", async () => {
  expect(await versionsRead(storeOf(aBoard(3), aBoard(2), aBoard(3), aBoard(4)), 4)).toEqual([3, null, 3, 4]);
});

it("passes over a board that is more than a minute old", async () => {
  expect(await versionsRead(storeOf(aBoard(1, NOW - 60_000), aBoard(2, NOW - 60_001)), 2)).toEqual([1, null]);
});

it("passes over what is no board, what fails and what is not there", async () => {
  expect(await versionsRead(storeOf({ version: 9 }, "text", new Error("down"), null, aBoard(1)), 5)).toEqual([
    null,
    null,
    null,
    null,
    1,
  ]);
  expect(await versionsRead(undefined, 1)).toEqual([null]);
});
