import { describe, expect, it } from "vitest";
import { READING_RULES } from "#shared/slip/reading-rules.ts";
import { slipReading } from "#shared/slip/slip-reading.ts";
import { SLIP_DEFAULTS } from "#shared/slip/slip-settings.ts";
import { aReading, aTool } from "#tests/slip/slip-readings.ts";

const decide = (...changes: Parameters<typeof aReading>) => slipReading(aReading(...changes), SLIP_DEFAULTS);

describe("slipReading", () => {
  it("works the uncertainty out as on paper", () => {
    // s = 0.1, s/√3 = 0.057735 with 2 degrees of freedom; 2 % of 20 is 0.4, /√3 = 0.230940; 0.1/√12 = 0.028868.
    // u = √(0.0033333 + 0.0533333 + 0.0008333) = 0.239792; dof = u⁴ · 2 / 0.057735⁴ = 595.125; t = 1.963953.
    const tool = aTool({ accuracyPercent: 2, resolution: 0.1 });
    const result = decide({ readings: [19.9, 20, 20.1], band: { low: 19.5, high: 20.5 }, tool });
    expect(result.mean).toBeCloseTo(20, 12);
    expect(result.standardUncertainty).toBeCloseTo(0.2397916, 6);
    expect(result.effectiveDof).toBeCloseTo(595.125, 3);
    expect(result.expanded).toBeCloseTo(1.9639625 * 0.2397916, 4);
    // 1 - 2 Φ(-0.5 / 0.239792) = 1 - 2 · 0.018527
    expect(result.probabilityInBand).toBeCloseTo(0.96295, 4);
    expect(result.decision).toBe("accept");
  });

  it("divides a certificate's uncertainty by its k, and a bare limit by √3", () => {
    const same = { readings: [18, 18, 18] };
    const withCertificate = decide({ ...same, tool: aTool({ accuracyPercent: 2, resolution: 0, k: 2 }) });
    expect(withCertificate.standardUncertainty).toBeCloseTo(0.18, 12);
    const withLimit = decide({ ...same, tool: aTool({ accuracyPercent: 2, resolution: 0 }) });
    expect(withLimit.standardUncertainty).toBeCloseTo(0.36 / Math.sqrt(3), 12);
  });

  it("counts the step of the display once, over its full width", () => {
    const tool = aTool({ accuracyPercent: 0.001, resolution: 0.6 });
    const { standardUncertainty } = decide({ readings: [18, 18, 18], tool });
    expect(standardUncertainty).toBeCloseTo(0.6 / Math.sqrt(12), 6);
  });

  it("leaves the degrees of freedom infinite where the readings are all the same", () => {
    const result = decide({ readings: [17.9, 17.9, 17.9] });
    expect(result.effectiveDof).toBeNull();
    expect(result.mean).toBe(17.9);
    expect(result.expanded / result.standardUncertainty).toBeCloseTo(1.959963985, 9);
  });

  it.each([
    [[17.8, 17.9, 17.8], "accept", "Each may be 5 % at most", "a little under the target is fine"],
    [[18.0, 18.05, 18.02], "not-proved", "between 17.67 and 17.93", "too near the upper limit to be sure"],
    [[17.5, 17.6, 17.55], "not-proved", "To be accepted", "too near the lower limit to be sure"],
    [[18.5, 18.6, 18.5], "reject", "over the band", "plainly over"],
    [[17.0, 17.1, 17.0], "reject", "under the band", "plainly under"],
  ])("decides %j: %s (%s), because %s", (readings, decision, reason) => {
    const result = decide({ readings });
    expect(result.decision).toBe(decision);
    expect(result.why).toContain(reason);
  });

  it("says so where no mean at all could be accepted", () => {
    const result = decide({ tool: aTool({ accuracyPercent: 4 }) });
    expect(result.decision).toBe("not-proved");
    expect(result.why).toContain("No mean can do that");
  });

  it("proves nothing with a click wrench, however good it claims to be, and says what the standard lets it miss by", () => {
    const tool = aTool({ kind: "click", accuracyPercent: 0.1, resolution: 0.001 });
    const result = decide({ readings: [17.8, 17.8, 17.8], tool });
    expect(result.decision).toBe("not-proved");
    // ISO 6789-1:2017, setting tools above 10 N·m: 4 %, of 17.8 lbf·ft
    expect(result.why).toContain("4 %, here 0.71 lbf·ft either way");
    expect(result.why).toContain("0.60 lbf·ft wide");
    expect(result.probabilityInBand).toBeGreaterThan(0.99);
  });

  it("does not reject with a click wrench either", () => {
    expect(decide({ readings: [25, 25, 25], tool: aTool({ kind: "click" }) }).decision).toBe("not-proved");
  });

  it("warns of a step coarser than a quarter of the tool's own limit, and decides all the same", () => {
    // 1 % of 17.8 is 0.178; a quarter of it 0.0445
    const fine = decide({ readings: [17.8, 17.8, 17.8], tool: aTool({ resolution: 0.044 }) });
    const coarse = decide({ readings: [17.8, 17.8, 17.8], tool: aTool({ resolution: 0.045 }) });
    expect(fine.warnings).toEqual([]);
    expect(coarse.warnings).toHaveLength(1);
    expect(coarse.why).toContain(coarse.warnings[0]);
    expect(coarse.why).toContain("quarter of its own limit");
    expect([fine.decision, coarse.decision]).toEqual(["accept", "accept"]);
  });

  it("does not hold a step against a certificate, which is no limit of error", () => {
    expect(decide({ tool: aTool({ resolution: 0.1, k: 2 }) }).warnings).toEqual([]);
  });

  it("says where the mean lies from the target", () => {
    expect(decide({ readings: [17.8, 17.8, 17.8] }).why).toMatch(/^The mean is 17.8 lbf·ft, 0.2 under the target[.]/);
    expect(decide({ readings: [18.05, 18.05, 18.05] }).why).toContain("0.05 over the target");
    expect(decide({ readings: [18, 18, 18] }).why).toContain("on the target");
  });

  it("leaves no rule that never decides, each with its own sentence", () => {
    const centres = Array.from({ length: 41 }, (_, step) => 16.8 + step * 0.05);
    const tools = [aTool(), aTool({ accuracyPercent: 4 }), aTool({ kind: "click" })];
    const sentences = centres.flatMap((centre) =>
      tools.map((tool) => decide({ readings: [centre, centre + 0.02, centre - 0.02], tool }).why),
    );
    const marks = [
      "click wrench",
      "is accepted",
      "is over the band",
      "is under the band",
      "No mean can",
      "To be accepted",
    ];
    expect(marks).toHaveLength(READING_RULES.length);
    for (const mark of marks) {
      expect(
        sentences.some((why) => why.includes(mark)),
        mark,
      ).toBe(true);
    }
  });
});
