import { describe, expect, it } from "vitest";
import type { InspectEntry, SheetEntry } from "#shared/job/sheet-entry.ts";
import { DULL_ENTRIES } from "#tests/job/a-sheet.ts";
import { aBooking, aLedger, type LedgerStub } from "#tests/ledger/a-ledger.ts";
import { takeTo, writeSheet } from "#tests/ledger/a-served-job.ts";
import { anAskWish, onBench } from "#tests/ledger/an-approval.ts";

const good = DULL_ENTRIES.inspect as InspectEntry;
const brokenGear: SheetEntry = {
  ...good,
  parts: { ...good.parts, "drive-gear": { condition: "broken", note: null } },
};
const uncounted: SheetEntry = { kind: "skipped", why: "Lost the tray" };

const debrisTold = async (ledger: LedgerStub, linkHash: string) =>
  (await ledger.findingsByLink(linkHash))?.engineDebris ?? null;

describe("what an owner is told of the engine without being asked anything", () => {
  it("is nothing before the unit is open, and nothing of another job", async () => {
    const ledger = await aLedger();
    const { linkHash } = await onBench(ledger);
    expect(await ledger.findingsByLink(linkHash)).toBeNull();
    expect(await ledger.findingsByLink("nobody's")).toBeNull();
  });

  it("is at once that parts went into it", async () => {
    const ledger = await aLedger();
    const { number, linkHash } = await onBench(ledger);
    const other = await aBooking(ledger);
    await writeSheet(ledger, number, { inspect: brokenGear });
    expect(await debrisTold(ledger, linkHash)).toBe("likely");
    expect(await debrisTold(ledger, other.linkHash)).toBeNull();
  });

  it("is that they may be in it only once the bench looks no more", async () => {
    const ledger = await aLedger();
    const { number, linkHash } = await onBench(ledger);
    await writeSheet(ledger, number, { "needles-out": uncounted });
    expect(await debrisTold(ledger, linkHash)).toBeNull();
    await ledger.moveJob({ number, move: "return", staff: "Wilma", note: "Beyond repair", ifState: "on-bench" });
    expect(await debrisTold(ledger, linkHash)).toBe("possible");
  });

  it("stays when the unit goes back while its owner is asked, until the job is closed and after", async () => {
    const ledger = await aLedger();
    const { number, linkHash } = await onBench(ledger);
    await writeSheet(ledger, number, { inspect: brokenGear });
    expect(await ledger.askOwner(anAskWish(number))).toMatchObject({ ok: true });
    const back = { number, move: "return", staff: "Wilma", note: "Owner wants it back" } as const;
    expect(await ledger.moveJob({ ...back, ifState: "owner-to-decide" })).toMatchObject({ ok: true });
    expect(await debrisTold(ledger, linkHash)).toBe("likely");
    await takeTo(ledger, number, ["close"]);
    expect(await debrisTold(ledger, linkHash)).toBe("likely");
  });
});
