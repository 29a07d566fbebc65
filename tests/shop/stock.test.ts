import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { UNIT_FAMILIES } from "#shared/craft/vocabulary.ts";
import { BUILDS, PARTS, partsFor, partsThatFit } from "#shared/shop/parts.ts";
import { SHELVES, shelfOf, shelvesFor } from "#shared/shop/shelf.ts";
import { type JobNeeds, stillWanted, stockOf } from "#shared/shop/stock.ts";
import { type Balance, balanceAfter, changeOf, EMPTY, type StockChange } from "#shared/shop/stock-book.ts";

const NOW = Date.UTC(2027, 4, 3, 14);
const DAY = 86_400_000;
const SETTINGS = { spareParts: 1, orderAheadDays: 21 };

const change = fc.oneof(
  fc.record({ kind: fc.constantFrom("receipt", "use", "use-undone"), count: fc.integer({ min: 1, max: 9 }) }),
  fc.record({ kind: fc.constant("count"), found: fc.nat(30) }),
) as fc.Arbitrary<StockChange>;

const bookAfter = (changes: readonly StockChange[]): Balance => changes.reduce(balanceAfter, EMPTY);

describe("the book of a shelf", () => {
  it("is receipts less use plus what counts put right, after any sequence", () => {
    fc.assert(
      fc.property(fc.array(change, { maxLength: 40 }), (changes) => {
        let [received, used, corrected] = [0, 0, 0];
        let book = EMPTY;
        for (const one of changes) {
          if (one.kind === "receipt") received += one.count;
          if (one.kind === "use") used += one.count;
          if (one.kind === "use-undone") used -= one.count;
          if (one.kind === "count") corrected += one.found - book.onHand;
          expect(changeOf(book, one)).toBe(balanceAfter(book, one).onHand - book.onHand);
          book = balanceAfter(book, one);
        }
        expect(book.onHand).toBe(received - used + corrected);
      }),
    );
  });

  it("says what was found right after a count, whatever came before", () => {
    fc.assert(
      fc.property(fc.array(change), fc.nat(50), (changes, found) => {
        expect(bookAfter([...changes, { kind: "count", found }])).toEqual({ onHand: found, countAgain: false });
      }),
    );
  });

  it("asks to count again from the moment it goes below nothing until somebody counts, and never else", () => {
    fc.assert(
      fc.property(fc.array(change, { maxLength: 40 }), (changes) => {
        const lastCount = changes.findLastIndex(({ kind }) => kind === "count");
        const since = changes
          .slice(lastCount + 1)
          .map((_, index) => bookAfter(changes.slice(0, lastCount + 2 + index)));
        expect(bookAfter(changes).countAgain).toBe(since.some(({ onHand }) => onHand < 0));
      }),
    );
  });

  it("keeps asking after a receipt has covered what was missing: the book was wrong all the same", () => {
    const used = { kind: "use", count: 2 } as const;
    expect(bookAfter([used])).toEqual({ onHand: -2, countAgain: true });
    expect(bookAfter([used, { kind: "receipt", count: 5 }])).toEqual({ onHand: 3, countAgain: true });
  });
});

const jobPart = fc.record({
  part: fc.constantFrom(...PARTS.map(({ part }) => part)),
  planned: fc.nat(4),
  used: fc.nat(6),
});
const job = fc.record({
  number: fc.string({ minLength: 1, maxLength: 4 }),
  unitFamily: fc.constantFrom(...UNIT_FAMILIES),
  startsAt: fc.integer({ min: -30, max: 60 }).map((days) => NOW + days * DAY),
  parts: fc.uniqueArray(jobPart, { selector: ({ part }) => part, maxLength: 8 }),
});
const balances = fc
  .array(fc.integer({ min: -5, max: 20 }), { minLength: SHELVES.length, maxLength: SHELVES.length })
  .map((hands) => SHELVES.map((shelf, index) => ({ ...shelf, onHand: hands[index]!, countAgain: hands[index]! < 0 })));
const settings = fc.record({ spareParts: fc.nat(5), orderAheadDays: fc.integer({ min: 1, max: 90 }) });
const stock = fc.record({ balances, jobs: fc.array(job, { maxLength: 8 }), settings, now: fc.constant(NOW) });

describe("the stock", () => {
  it("is never low once exactly what it suggests has come", () => {
    fc.assert(
      fc.property(stock, (it) => {
        const ordered = stockOf(it);
        const come = it.balances.map((balance, index) => ({
          ...balance,
          onHand: balance.onHand + ordered[index]!.order,
        }));
        for (const line of stockOf({ ...it, balances: come })) expect([line.low, line.order]).toEqual([false, 0]);
        for (const line of ordered) expect(line.low).toBe(line.order > 0);
      }),
    );
  });

  it("would still be low with one part less than it suggests", () => {
    fc.assert(
      fc.property(stock, (it) => {
        const ordered = stockOf(it);
        const almost = it.balances.map((balance, index) => ({
          ...balance,
          onHand: balance.onHand + Math.max(0, ordered[index]!.order - 1),
        }));
        for (const [index, line] of stockOf({ ...it, balances: almost }).entries())
          expect(line.low).toBe(ordered[index]!.low);
      }),
    );
  });

  it("never reserves a part that is used already: reserved and used together are never more than what is wanted", () => {
    fc.assert(
      fc.property(jobPart, (part) => {
        expect(stillWanted(part)).toBeGreaterThanOrEqual(0);
        expect(stillWanted(part) + Math.min(part.used, part.planned)).toBe(part.planned);
      }),
    );
  });

  it("moves a part from reserved to used when it is used, and back when that is taken back", () => {
    fc.assert(
      fc.property(job, fc.nat(7), ({ parts, ...of }, index) => {
        const part = parts[index % Math.max(1, parts.length)];
        if (part === undefined || part.used >= part.planned) return;
        const used = parts.map((it) => (it === part ? { ...it, used: it.used + 1 } : it));
        for (const shelf of shelvesFor(part.part, of.unitFamily).filter(({ shared }) => !shared)) {
          const reserved = (of_: readonly (typeof part)[]) =>
            stockOf({ balances: [], jobs: [{ ...of, parts: of_ }], settings: SETTINGS, now: NOW }).find(
              ({ part: name, family }) => name === shelf.part && family === shelf.family,
            )!.reserved;
          expect(reserved(used)).toBe(reserved(parts) - 1);
        }
      }),
    );
  });

  it("reserves for every job that is not over, but orders only for those of the coming weeks", () => {
    const wants = (number: string, days: number): JobNeeds => ({
      number,
      unitFamily: "set-nut",
      startsAt: NOW + days * DAY,
      parts: [{ part: "lock-nut", planned: 1, used: 0 }],
    });
    const lines = stockOf({
      balances: [{ part: "lock-nut", family: "set-nut", onHand: 2, countAgain: false }],
      jobs: [wants("NEAR", 21), wants("LATE", 22), wants("PAST", -3)],
      settings: SETTINGS,
      now: NOW,
    });
    expect(lines.find(({ part, family }) => part === "lock-nut" && family === "set-nut")).toMatchObject({
      reserved: 3,
      free: -1,
      low: true,
      order: 1,
      wantedBy: [
        { number: "NEAR", count: 1 },
        { number: "PAST", count: 1 },
      ],
    });
  });

  it("keeps nothing to spare of what only a finding calls for, and orders it once a job wants it", () => {
    const housing = (jobs: readonly JobNeeds[]) =>
      stockOf({ balances: [], jobs, settings: SETTINGS, now: NOW }).find(
        ({ part, family }) => part === "housing" && family === "set-nut",
      );
    expect(housing([])).toMatchObject({ low: false, order: 0 });
    const parts = [{ part: "housing", planned: 1, used: 0 }];
    expect(housing([{ number: "ONE", unitFamily: "set-nut", startsAt: NOW, parts }])).toMatchObject({ order: 1 });
  });

  it("keeps a part on both shelves for a unit whose build is not known, and a bottle for nobody", () => {
    const parts = [
      { part: "lock-nut", planned: 1, used: 0 },
      { part: "thread-locker", planned: 1, used: 0 },
    ];
    const jobs = [{ number: "ONE", unitFamily: "unknown", startsAt: NOW, parts }] as const;
    const reserved = stockOf({ balances: [], jobs, settings: SETTINGS, now: NOW }).filter((line) => line.reserved > 0);
    expect(reserved.map(({ part, family }) => [part, family])).toEqual([
      ["lock-nut", "shim-stack"],
      ["lock-nut", "set-nut"],
    ]);
  });
});

describe("the catalogue", () => {
  it("has a shelf for whatever any job lays out", () => {
    for (const unitFamily of UNIT_FAMILIES)
      for (const work of ["slip-check", "full-rebuild", "stop-riding"] as const)
        for (const ceramic of [true, false])
          for (const { part } of partsFor({ work, unitFamily, ceramic }))
            expect(shelvesFor(part, unitFamily).length).toBe(
              part === "shim-washers" || part === "thread-locker" ? 1 : unitFamily === "unknown" ? BUILDS.length : 1,
            );
  });

  it("names each shelf once, and offers an inspection more than any job lays out", () => {
    const keys = SHELVES.map(({ part, family }) => `${part}/${family}`);
    expect(new Set(keys).size).toBe(keys.length);
    expect(shelfOf({ part: "lock-nut", family: "any" })).toBeUndefined();
    const names = (unitFamily: (typeof UNIT_FAMILIES)[number]) => partsThatFit(unitFamily).map(({ part }) => part);
    expect(names("set-nut")).toEqual(expect.arrayContaining(["shaft", "impeller", "set-nut", "thread-locker"]));
    expect(names("set-nut")).not.toContain("shim-washers");
    expect(names("shim-stack")).not.toContain("set-nut");
    expect(names("unknown")).toEqual(PARTS.map(({ part }) => part));
  });
});
