import { runDurableObjectAlarm, runInDurableObject } from "cloudflare:test";
import * as fc from "fast-check";
import { expect, it } from "vitest";
import {
  aBooking,
  aLedger,
  DAY,
  type LedgerStub,
  MINUTE,
  MONDAY,
  setClock,
  takenQuanta,
} from "#tests/ledger/a-ledger.ts";
import { anAskWish, receiveAndStart } from "#tests/ledger/an-approval.ts";

type Step =
  | { readonly does: "ask"; readonly job: number; readonly work: "slip-check" | "full-rebuild" | "stop-riding" }
  | { readonly does: "answer"; readonly job: number; readonly answer: "approve" | "decline" }
  | { readonly does: "book" }
  | { readonly does: "wait"; readonly hours: number };

const job = fc.nat({ max: 3 });
const aStep: fc.Arbitrary<Step> = fc.oneof(
  fc.record({
    does: fc.constant("ask"),
    job,
    work: fc.constantFrom("slip-check", "full-rebuild", "stop-riding"),
  } as const),
  fc.record({ does: fc.constant("answer"), job, answer: fc.constantFrom("approve", "approve", "decline") } as const),
  fc.record({ does: fc.constant("book") } as const),
  fc.record({ does: fc.constant("wait"), hours: fc.constantFrom(0.25, 1, 3, 20, 80) } as const),
);

it("no quarter-hour of a bench is ever anybody else's as well, whatever is asked and answered", async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(aStep, { minLength: 5, maxLength: 25 }), async (steps) => {
      const ledger = await aLedger();
      const jobs = [await aBooking(ledger), await aBooking(ledger), await aBooking(ledger), await aBooking(ledger)];
      let now = MONDAY + 4 * DAY - 90 * MINUTE;
      await setClock(ledger, now);
      for (const { number } of jobs) await receiveAndStart(ledger, number);
      const asked = new Map<number, string>();
      for (const step of steps) {
        if (step.does === "wait") {
          now += step.hours * 60 * MINUTE;
          await setClock(ledger, now);
          await runDurableObjectAlarm(ledger);
        } else if (step.does === "book") await aBooking(ledger);
        else if (step.does === "ask") {
          const wish = anAskWish(jobs[step.job]!.number, { work: step.work, untilDate: "2040-06-30" });
          if ((await ledger.askOwner(wish)).ok) asked.set(step.job, wish.id);
        } else {
          const { linkHash } = jobs[step.job]!;
          await ledger.answerApproval({ linkHash, approval: asked.get(step.job) ?? "none", answer: step.answer });
        }
        expect(await takenQuanta(ledger)).toEqual(await promisedQuanta(ledger));
      }
    }),
    { numRuns: 25 },
  );
});

/** The quanta of all bookings, by what the bookings themselves say: each must be taken once, and no other may be. */
const promisedQuanta = (ledger: LedgerStub) =>
  runInDurableObject(ledger, (_, { storage: { sql } }) =>
    sql
      .exec<{ bench: string; claim: string; from_quantum: number; to_quantum: number; freed_from: number | null }>(
        "SELECT bench, claim, from_quantum, to_quantum, freed_from FROM booking",
      )
      .toArray()
      .flatMap(({ bench, claim, from_quantum: from, to_quantum: to, freed_from: freed }) =>
        Array.from({ length: Math.max(0, (freed ?? to) - from) }, (_, index) => ({
          bench,
          quantum: from + index,
          claim,
        })),
      )
      .toSorted((one, other) => one.bench.localeCompare(other.bench) || one.quantum - other.quantum),
  );
