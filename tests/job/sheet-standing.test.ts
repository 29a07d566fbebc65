import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { UNIT_FAMILIES } from "#shared/craft/vocabulary.ts";
import { INSPECTED_PARTS, SHEET_STEPS, type SheetStepId } from "#shared/job/sheet-entry.ts";
import { sheetStanding } from "#shared/job/sheet-standing.ts";
import { partsToInspect, stepsFor } from "#shared/job/sheet-steps.ts";
import { STEP_WORDS } from "#shared/messages/sheet-words.ts";
import { aCase, aSheet, asStored, CLICK, DIGITAL, DULL_ENTRIES } from "#tests/job/a-sheet.ts";

const anyWork = fc.record({
  work: fc.constantFrom("slip-check", "full-rebuild", "stop-riding"),
  unitFamily: fc.constantFrom(...UNIT_FAMILIES),
} as const);
const standingOf = (id: SheetStepId, it: ReturnType<typeof sheetStanding>) =>
  it.steps.find(({ step }) => step.id === id);

describe("which steps a unit has", () => {
  it("a rebuild of a set-nut unit has all but the shims, of a shim-stack unit all but what belongs to the set nut", () => {
    const rebuild = (unitFamily: "set-nut" | "shim-stack" | "unknown") =>
      stepsFor({ work: "full-rebuild", unitFamily }).map(({ id }) => id);
    expect(rebuild("set-nut")).toEqual(SHEET_STEPS.filter((id) => id !== "shims"));
    expect(rebuild("shim-stack")).toEqual(
      SHEET_STEPS.filter((id) => id !== "plate-recess" && id !== "slip-before-lock"),
    );
    expect(rebuild("unknown")).toEqual(SHEET_STEPS);
  });

  it("a slip check opens nothing", () => {
    expect(stepsFor({ work: "slip-check", unitFamily: "set-nut" }).map(({ id }) => id)).toEqual([
      "as-found-slip",
      "inspect",
      "slip-before-lock",
      "lock-nut",
      "final-slip",
      "turn-by-hand",
    ]);
    expect(partsToInspect({ work: "slip-check", unitFamily: "set-nut" })).not.toContain("needle-bearings");
    expect(partsToInspect({ work: "stop-riding", unitFamily: "set-nut" })).toEqual(INSPECTED_PARTS);
  });

  it("a step that belongs to one family is never asked of a unit known to be of the other", () => {
    fc.assert(
      fc.property(anyWork, (work) => {
        const ids = stepsFor(work).map(({ id }) => id);
        if (work.unitFamily === "set-nut") expect(ids).not.toContain("shims");
        if (work.unitFamily === "shim-stack") expect(ids).not.toContain("plate-recess");
        expect(ids.at(0)).toBe("as-found-slip");
        expect(ids).toContain("final-slip");
      }),
    );
  });

  it("nothing on the sheet tells anybody to tighten a set nut home", () => {
    for (const { says, cautions } of Object.values(STEP_WORDS)) {
      for (const line of says) expect(line).not.toMatch(/\bhome\b/i);
      for (const { text } of cautions) if (/home/i.test(text)) expect(text).toContain("locks the gear solid");
    }
  });
});

describe("where a sheet stands", () => {
  it("is complete exactly when every step is done or skipped with a reason", () => {
    fc.assert(
      fc.property(anyWork, fc.array(fc.constantFrom(...SHEET_STEPS)), (work, dropped) => {
        const it = aCase(work);
        const whole = aSheet(work);
        const sheet = Object.fromEntries(Object.entries(whole).filter(([id]) => !dropped.includes(id as SheetStepId)));
        const asked = stepsFor(work).map(({ id }) => id);
        const missing = asked.filter((id) => dropped.includes(id));
        // Without what came out, it is not known how many should go in.
        if (dropped.includes("needles-out") && asked.includes("needles-in") && !dropped.includes("needles-in"))
          missing.push("needles-in");
        const standing = sheetStanding(it, sheet);
        expect([...standing.missing].sort()).toEqual([...missing].sort());
        expect(standing.complete).toBe(missing.length === 0);
        const skipped = asStored(
          Object.fromEntries(asked.map((id) => [id, { kind: "skipped", why: "Not asked for" }])),
        );
        expect(sheetStanding(it, skipped)).toMatchObject({ complete: true, missing: [] });
      }),
    );
  });

  it("needles in must be those that came out, or the family's number where it is known, or it is said why", () => {
    const count = fc.integer({ min: 0, max: 60 });
    fc.assert(
      fc.property(count, count, fc.option(count), fc.boolean(), (out, goneIn, known, said) => {
        const why = said ? "One was lost in the engine" : null;
        const sheet = aSheet(aCase(), {
          "needles-out": { kind: "count", needles: out, why: "As found" },
          "needles-in": { kind: "count", needles: goneIn, why },
        });
        const right = goneIn === (known ?? out);
        const { standing } = standingOf("needles-in", sheetStanding(aCase({ needles: known }), sheet))!;
        expect(standing).toBe(right || said ? "done" : "needs-why");
      }),
    );
  });

  it("a count out that is not the family's number wants a reason, and a blank one is none", () => {
    const at = (why: string | null) =>
      standingOf(
        "needles-out",
        sheetStanding(aCase({ needles: 41 }), aSheet(aCase(), { "needles-out": { kind: "count", needles: 40, why } })),
      );
    expect(at(null)).toMatchObject({ standing: "needs-why", because: "needles-differ" });
    expect(at("  ")).toMatchObject({ standing: "needs-why" });
    expect(at("One is missing")).toMatchObject({ standing: "done" });
  });

  const final = (change: object, it = aCase()) =>
    standingOf(
      "final-slip",
      sheetStanding(it, aSheet(it, { "final-slip": { ...DULL_ENTRIES["final-slip"], ...change } as never })),
    );

  it("fewer than three final readings leave the step open, whatever is said to it", () => {
    expect(final({ readings: [17.8, 17.8], why: "Enough" })).toMatchObject({
      standing: "open",
      because: "too-few-readings",
    });
    expect(final({ readings: [17.8, 17.8, 17.8] })).toMatchObject({ standing: "done" });
  });

  it("a click wrench never proves the final slip, whatever is said to it; a first rough set may be read with one", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 12, max: 20, noNaN: true }), { minLength: 1, maxLength: 9 }),
        (readings) => {
          expect(final({ readings, tool: CLICK, why: "The digital one is away" })).toMatchObject({
            standing: "open",
            because: "click-tool",
          });
        },
      ),
    );
    const sheet = aSheet(aCase(), {
      "slip-before-lock": { ...DULL_ENTRIES["slip-before-lock"], tool: CLICK } as never,
      "as-found-slip": { ...DULL_ENTRIES["as-found-slip"], tool: CLICK } as never,
    });
    expect(sheetStanding(aCase(), sheet).complete).toBe(true);
  });

  it("the breakaway peak changes nothing", () => {
    fc.assert(
      fc.property(fc.option(fc.double({ min: 1, max: 60, noNaN: true })), (breakaway) => {
        expect(final({ breakaway })).toEqual(final({}));
      }),
    );
  });

  it("a slip outside the band is set again, one that is not proved may be left with a reason", () => {
    expect(final({ readings: [19, 19, 19], why: "The owner wants it" })).toMatchObject({
      standing: "open",
      because: "slip-over-band",
    });
    expect(final({ readings: [15, 15, 15], why: "Enough" })).toMatchObject({ because: "slip-under-band" });
    expect(final({ readings: [17.5, 17.5, 17.5] })).toMatchObject({
      standing: "needs-why",
      because: "slip-not-proved",
    });
    expect(final({ readings: [17.5, 17.5, 17.5], why: "A little under is fine" })).toMatchObject({ standing: "done" });
  });

  it("without a target the bench says what it aimed for", () => {
    expect(final({}, aCase({ aim: null }))).toMatchObject({ standing: "needs-why", because: "no-target" });
    expect(final({ why: "17.8 as agreed on the phone" }, aCase({ aim: null }))).toMatchObject({ standing: "done" });
  });

  it("every part that can be seen is judged", () => {
    const parts = { shaft: { condition: "good" as const, note: null } };
    const sheet = aSheet(aCase(), {
      inspect: { kind: "inspect", parts, unitFamily: null, boostPsi: null, serial: null },
    });
    expect(standingOf("inspect", sheetStanding(aCase(), sheet))).toMatchObject({
      standing: "open",
      because: "parts-not-judged",
    });
  });

  it("what was skipped is shown as skipped", () => {
    const sheet = aSheet(aCase(), { impeller: { kind: "skipped", why: "Left on" } });
    expect(standingOf("impeller", sheetStanding(aCase(), sheet))).toMatchObject({ standing: "skipped" });
  });

  it("readings taken with a wrench too coarse for the band stay not proved", () => {
    expect(final({ tool: { ...DIGITAL, accuracyPercent: 6 } })).toMatchObject({ standing: "needs-why" });
  });
});
