import { runInDurableObject } from "cloudflare:test";
import { expect, it } from "vitest";
import type { JobMoveName } from "#shared/job/job-moves.ts";
import { serialOf } from "#shared/shop/job-number.ts";
import { JOB_STATES } from "#shared/shop/job-state.ts";
import { DAY_SHEET_QUERY } from "#src/ledger/day-sheet-rows.ts";
import { aBooking, aLedger, DAY, type LedgerStub, MINUTE, MONDAY, setClock } from "#tests/ledger/a-ledger.ts";

const act = async (ledger: LedgerStub, number: string, move: JobMoveName, note: string | null = null) => {
  const ifState = (await ledger.job(number))!.state;
  expect(await ledger.moveJob({ number, move, staff: "Wilma Bench", note, ifState })).toMatchObject({ ok: true });
};

it("shows what is in hand and what comes within a week, each since when it is as it is", async () => {
  const ledger = await aLedger();
  const [far] = await ledger.offers({ verdict: "slip-check", from: "2040-06-04" });
  await aBooking(ledger, { offer: far!.id });
  const soon = await aBooking(ledger);
  const here = await aBooking(ledger);
  await act(ledger, here.number, "receive");
  await setClock(ledger, MONDAY + MINUTE);
  await act(ledger, here.number, "start");
  await act(ledger, here.number, "await-part", "No shaft left");
  const sheet = await ledger.daySheet();
  expect(sheet.map(({ number }) => number).sort()).toEqual([soon.number, here.number].sort());
  expect(sheet.find(({ number }) => number === here.number)).toMatchObject({
    state: "part-to-come",
    work: "slip-check",
    ownerName: "Ada Quill",
    keepsTime: true,
    since: MONDAY + MINUTE,
    note: "No shaft left",
  });
  expect(sheet.find(({ number }) => number === soon.number)).toMatchObject({
    state: "booked",
    since: MONDAY,
    note: null,
  });
  // However late a parcel is, it does not drop off.
  await setClock(ledger, MONDAY + 200 * DAY);
  expect(await ledger.daySheet()).toHaveLength(3);
});

it("shows every job that is not over, and none that is", async () => {
  const ledger = await aLedger();
  const { number } = await aBooking(ledger);
  for (const state of JOB_STATES) {
    await runInDurableObject(ledger, (_, { storage: { sql } }) => {
      sql.exec("UPDATE job SET state = ? WHERE serial = ?", state, serialOf(number));
    });
    expect(await ledger.daySheet(), state).toHaveLength(state === "cancelled" || state === "closed" ? 0 : 1);
  }
});

it("looks at no job that is over", async () => {
  const ledger = await aLedger();
  const plan = await runInDurableObject(ledger, (_, { storage: { sql } }) =>
    sql
      .exec<{ detail: string }>(`EXPLAIN QUERY PLAN ${DAY_SHEET_QUERY}`, 0)
      .toArray()
      .map(({ detail }) => detail),
  );
  const [first = "", ...joined] = plan;
  expect(first).toMatch(/^(SCAN|SEARCH) job USING (COVERING )?INDEX open_job/);
  expect(joined.filter((line) => line.startsWith("SCAN"))).toEqual([]);
});
