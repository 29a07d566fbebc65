import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { INSPECTED_PARTS, PART_CONDITIONS, SHEET_STEPS, type SheetEntry } from "#shared/job/sheet-entry.ts";
import { BACKED_OFF, fieldsOf, readEntry, readReadings, readTool, readTries, SKIP } from "#shared/job/sheet-fields.ts";
import { ENTRY_SCHEMAS } from "#shared/job/sheet-schema.ts";
import { stepKind } from "#shared/job/sheet-steps.ts";
import { entryText } from "#shared/messages/sheet-entry-words.ts";
import { TOOL_KINDS } from "#shared/slip/torque-tool.ts";
import { DIGITAL, DULL_ENTRIES } from "#tests/job/a-sheet.ts";

const hundredths = (min: number, max: number) => fc.integer({ min: min * 100, max: max * 100 }).map((it) => it / 100);
const said = fc.option(
  fc
    .string({ minLength: 1, maxLength: 40 })
    .map((it) => it.trim())
    .filter((it) => it !== ""),
);
const slip = hundredths(1, 60);
const tool = fc
  .record({
    kind: fc.constantFrom(...TOOL_KINDS),
    accuracyPercent: hundredths(1, 20),
    resolution: hundredths(0, 20),
    k: fc.option(hundredths(1, 4)),
  })
  .map(({ k, ...it }) => (k === null ? it : { ...it, k }));

const anyEntry: fc.Arbitrary<SheetEntry> = fc.oneof(
  fc.record({
    kind: fc.constant("slip" as const),
    readings: fc.array(slip, { minLength: 1, maxLength: 9 }),
    breakaway: fc.option(slip),
    tool,
    why: said,
  }),
  fc.record({
    kind: fc.constant("inspect" as const),
    parts: fc.dictionary(
      fc.constantFrom(...INSPECTED_PARTS),
      fc.record({ condition: fc.constantFrom(...PART_CONDITIONS), note: said }),
    ),
    unitFamily: fc.constantFrom("set-nut", "shim-stack", null),
    boostPsi: fc.option(hundredths(0, 60)),
    serial: fc.option(fc.stringMatching(/^[A-Z0-9-]{1,20}$/)),
  }),
  fc.record({ kind: fc.constant("count" as const), needles: fc.integer({ min: 0, max: 200 }), why: said }),
  fc.record({
    kind: fc.constant("setting" as const),
    tries: fc.array(
      fc.record({
        nutDegrees: fc.option(hundredths(0, 1000)),
        shimMm: fc.option(hundredths(0, 20)),
        slip,
        loosened: fc.boolean(),
      }),
      { minLength: 1, maxLength: 6 },
    ),
    tool,
  }),
  fc.record({ kind: fc.constant("done" as const), note: said }),
  fc.record({ kind: fc.constant("skipped" as const), why: said.map((it) => it ?? "Not asked for") }),
) as fc.Arbitrary<SheetEntry>;

describe("a step's form", () => {
  it("reads back as the entry that it shows, and its schema takes it", () => {
    fc.assert(
      fc.property(anyEntry, (entry) => {
        const kind = entry.kind === "skipped" ? "done" : entry.kind;
        expect(ENTRY_SCHEMAS[entry.kind].parse(readEntry(kind, fieldsOf(entry)))).toEqual(entry);
        expect(entryText(entry)).not.toBe("");
      }),
    );
  });

  it("takes a decimal comma, and leaves out empty fields", () => {
    const fields = { readings: ["17,8", "", " 17.9 "], breakaway: [""], why: [""] };
    expect(readEntry("slip", fields)).toMatchObject({ readings: [17.8, 17.9], breakaway: null, why: null });
    expect(readReadings(fields)).toEqual([17.8, 17.9]);
  });

  it("leaves what is no number as it was typed, for the schema to name", () => {
    for (const typed of ["17.8.1", "1e3", "seventeen", "0x10", "--4", "17 8"]) {
      const read = readEntry("slip", { ...fieldsOf(DULL_ENTRIES["final-slip"]), readings: ["17.8", typed] });
      expect(ENTRY_SCHEMAS.slip.safeParse(read).error?.issues[0]?.path).toEqual(["readings", 1]);
    }
  });

  it("a row of a try with anything in it is a try, and a wrong one is named", () => {
    const fields = {
      "tries.nutDegrees": ["180", "240", ""],
      "tries.slip": ["8.6", "", ""],
      "tries.reached": ["", BACKED_OFF, ""],
    };
    const read = readEntry("setting", { ...fields, "tool.kind": ["beam"] }) as never as { tries: unknown[] };
    expect(read.tries).toEqual([
      { nutDegrees: 180, shimMm: null, slip: 8.6, loosened: false },
      { nutDegrees: 240, shimMm: null, slip: null, loosened: true },
    ]);
    expect(readTries(fields)).toHaveLength(1);
  });

  it("reads a wrench for live figures only when it is described", () => {
    expect(readTool(fieldsOf(DULL_ENTRIES["final-slip"]))).toEqual(DIGITAL);
    expect(
      readTool({ "tool.kind": ["electronic"], "tool.accuracyPercent": [""], "tool.resolution": ["0.1"] }),
    ).toBeNull();
  });

  it("a skipped step without a reason is not taken", () => {
    const read = readEntry("count", { [SKIP.button]: [SKIP.value], [SKIP.why]: ["  "], needles: ["40"] });
    expect(read.kind).toBe("skipped");
    expect(ENTRY_SCHEMAS.skipped.safeParse(read).success).toBe(false);
  });

  it("every step takes one kind of entry", () => {
    for (const id of SHEET_STEPS) expect(DULL_ENTRIES[id].kind).toBe(stepKind(id));
  });
});
