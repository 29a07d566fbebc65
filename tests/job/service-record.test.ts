import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { canonicalJson } from "#shared/basics/canonical-json.ts";
import { correctedService } from "#shared/job/record-correction.ts";
import { RecordSchema, ServiceSchema } from "#shared/job/record-schema.ts";
import { plainService } from "#shared/messages/record-plain.ts";
import { betweenText } from "#shared/messages/record-words.ts";
import { DEMO_SHOP } from "#shared/shop/shop-settings.ts";
import { slipReading } from "#shared/slip/slip-reading.ts";
import { FEWEST_READINGS } from "#shared/slip/torque-tool.ts";
import { aGentleSheet, aService, aServiceInput } from "#tests/job/a-service.ts";
import { asStored, CLICK, DIGITAL } from "#tests/job/a-sheet.ts";
import { aCraft, done, ON_DATE } from "#tests/support/a-craft.ts";

const changeNothing = (service = aService()) => ({
  serial: service.unit.serial,
  engineHours: service.engineHours,
  foundReadings: service.found.slip?.readings ?? [],
  leftReadings: service.left.slip?.readings ?? [],
  parts: service.parts,
  note: service.note,
});
const by = { answers: aCraft(), settings: DEMO_SHOP };
const finalSlip = (readings: readonly number[], tool = DIGITAL) =>
  ({ kind: "slip", readings, breakaway: null, tool, why: null }) as const;

describe("a service's record", () => {
  it("keeps to its schema, and its text stays the same", () => {
    const service = aService();
    expect(ServiceSchema.parse(service)).toEqual(service);
    const record = {
      kind: "service",
      version: 1,
      job: "16JD",
      at: "2027-05-01T12:00:00.000Z",
      by: null,
      service,
    } as const;
    const text = canonicalJson(record);
    expect(canonicalJson(RecordSchema.parse(JSON.parse(text)))).toBe(text);
    expect(canonicalJson({ ...record, service: aService() })).toBe(text);
  });

  it("decides on the final readings as the bench did", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1100, max: 1400 }), { minLength: 3, maxLength: 6 }), (hundredths) => {
        const readings = hundredths.map((it) => it / 100);
        const { left } = aService({ sheet: aGentleSheet({ "final-slip": finalSlip(readings) }) });
        const aim = { target: 12.5, band: { low: 12, high: 13 } };
        const read = slipReading({ ...aim, readings, tool: DIGITAL }, DEMO_SHOP.slip);
        expect(left.slip?.decision?.is).toBe(read.decision);
        expect(left.slip?.mean).toBeCloseTo(read.mean, 4);
        expect(left.slip?.uncertainty?.expanded).toBeCloseTo(read.expanded, 4);
      }),
    );
  });

  it("gives fewer than three readings a mean, and nothing that they cannot bear", () => {
    for (const readings of [[11], [11, 11.5]]) {
      expect(readings.length).toBeLessThan(FEWEST_READINGS);
      const { slip } = aService({ sheet: aGentleSheet({ "as-found-slip": finalSlip(readings) }) }).found;
      expect(slip).toMatchObject({ uncertainty: null, decision: null });
    }
  });

  it("starts the clocks from what was done", () => {
    const answers = aCraft({ engineHours: 140, builtYear: 2020, lastRebuild: done("2026-01-10", 20) });
    expect(aService({}, answers).next).toEqual({
      kind: "full-rebuild",
      slipCheckAtHours: 240,
      rebuildAtHours: 220,
      rebuildBy: "2028-01-10",
      slipInterval: 100,
    });
    const input = aServiceInput({}, answers);
    const rebuilt = aService({ bench: { ...input.bench, work: "full-rebuild" } }, answers);
    expect(rebuilt.next).toMatchObject({ slipCheckAtHours: 240, rebuildAtHours: 340, rebuildBy: "2029-05-01" });
  });

  it("starts no clock by a slip that was not read, or lies outside the band", () => {
    const answers = aCraft({ engineHours: 140, lastRebuild: done("2026-01-10", 20) });
    const told = { slipCheckAtHours: 120, rebuildAtHours: 220, rebuildBy: "2028-01-10" };
    const skipped = { "final-slip": { kind: "skipped", why: "Owner took it back" } } as const;
    expect(aService({ sheet: aGentleSheet(skipped) }, answers).next).toMatchObject(told);
    const over = { "final-slip": finalSlip([15, 15, 15.05]) };
    expect(aService({ sheet: aGentleSheet(over) }, answers).next).toMatchObject(told);
  });

  it("names every skipped step with its reason, and who worked once", () => {
    const skipped = {
      screws: { kind: "skipped", why: "Not opened" },
      "turn-by-hand": { kind: "done", note: "No rub" },
    };
    const { steps, worked } = aService({ sheet: aGentleSheet(skipped as never) });
    expect(steps.filter(({ was }) => was === "skipped")).toEqual([
      { step: "screws", was: "skipped", note: "Not opened" },
    ]);
    expect(worked).toEqual(["Sedge Hallow", "Wilma Bench"]);
  });

  it("is made of whatever the bench wrote, even of nothing", () => {
    const nothing = aService({ sheet: asStored({}), serial: "none" });
    expect(ServiceSchema.parse(nothing)).toEqual(nothing);
    expect(nothing).toMatchObject({ unit: { serial: null }, found: { slip: null }, left: { slip: null }, steps: [] });
  });
});

describe("a correction", () => {
  it("that changes nothing leaves the service as it was", () => {
    const service = aService();
    expect(correctedService(service, changeNothing(), by)).toEqual(service);
  });

  it("works out anew all that follows from what it changes, and nothing else", () => {
    const service = aService();
    const change = { ...changeNothing(), engineHours: 55, leftReadings: [12.7, 12.7, 12.75], serial: "x-77 01" };
    const corrected = correctedService(service, change, by);
    expect(corrected.left.slip).toEqual(
      aService({ sheet: aGentleSheet({ "final-slip": finalSlip([12.7, 12.7, 12.75]) }) }).left.slip,
    );
    expect(corrected.left.rise).toEqual({ before: 11, after: corrected.left.slip?.mean });
    expect(corrected.next.slipCheckAtHours).toBe(155);
    expect(corrected.unit.serial).toBe("X7701");
    const { unit, engineHours, left, next, ...rest } = corrected;
    expect(service).toMatchObject(rest);
  });

  it("makes up no readings where none were taken", () => {
    const service = aService({ sheet: aGentleSheet({ "as-found-slip": { kind: "skipped", why: "Seized" } }) });
    expect(
      correctedService(service, { ...changeNothing(service), foundReadings: [11, 11, 11] }, by).found.slip,
    ).toBeNull();
  });
});

describe("in plain words", () => {
  it("an interval is rounded outwards: it never claims more than was measured", () => {
    expect(betweenText(17.85, 0.12, 0.95)).toBe("between 17.7 and 18.0 with 95 % confidence");
    expect(betweenText(17.8, 0.1, 0.95)).toBe("between 17.7 and 17.9 with 95 % confidence");
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 40, noNaN: true }),
        fc.double({ min: 0, max: 3, noNaN: true }),
        (mean, half) => {
          const [, low, high] = /between ([\d.]+) and ([\d.]+)/.exec(betweenText(mean, half, 0.95)) ?? [];
          expect(Number(low)).toBeLessThanOrEqual(mean - half + 1e-6);
          expect(Number(low)).toBeGreaterThan(mean - half - 0.1 - 1e-6);
          expect(Number(high)).toBeGreaterThanOrEqual(mean + half - 1e-6);
          expect(Number(high)).toBeLessThan(mean + half + 0.1 + 1e-6);
        },
      ),
    );
  });

  it("a click wrench's figure is called rough, and no interval is claimed", () => {
    const [says] = plainService(
      aService({ sheet: aGentleSheet({ "as-found-slip": finalSlip([11, 11, 11], CLICK) }) }),
      "en-US",
    ).found;
    expect(says).toBe("The slip was 11 lbf·ft (14.9 N·m) as it came in, by a click wrench: a rough figure.");
  });

  it("hours that nobody knows become hours from now", () => {
    const { next } = plainService(aService({}, aCraft({ engineHours: null, builtYear: null })), "en-US");
    expect(next[0]).toBe("Have the slip checked after another 100 engine hours.");
    expect(ON_DATE).toBe("2027-05-01");
  });

  it("a slip that was not read at the end is not said to be set", () => {
    const skipped = { kind: "skipped", why: "The fixture broke" } as const;
    const { done, left } = plainService(aService({ sheet: aGentleSheet({ "final-slip": skipped }) }), "en-US");
    expect(done[0]).not.toMatch(/slip/);
    expect(left).toEqual(["The slip was not measured at the end: The fixture broke"]);
    expect(plainService(aService(), "en-US").done[0]).toMatch(/set/);
  });

  it("what was not proved says so, with what the bench said to it", () => {
    const why = "Owner wants it back for the season";
    const entry = { ...finalSlip([12.95, 13.05, 12.95]), why };
    const { left } = plainService(aService({ sheet: aGentleSheet({ "final-slip": entry }) }), "en-US");
    expect(left.join(" ")).toMatch(/not proved\. The bench says: Owner wants it back for the season$/);
  });
});
