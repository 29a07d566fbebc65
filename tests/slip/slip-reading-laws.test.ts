import normalOracle from "@stdlib/stats-base-dists-normal-cdf";
import tOracle from "@stdlib/stats-base-dists-t-quantile";
import * as fc from "fast-check";
import { mean as meanOracle, std } from "mathjs";
import { describe, expect, it } from "vitest";
import { conformity, guardBand } from "#shared/slip/conformity.ts";
import { READING_RULES, type ReadingFacts } from "#shared/slip/reading-rules.ts";
import { slipReading } from "#shared/slip/slip-reading.ts";
import { SLIP_DEFAULTS } from "#shared/slip/slip-settings.ts";
import { aTool, bands, requests } from "#tests/slip/slip-readings.ts";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** The decision on a mean and an uncertainty alone, without readings that would move both at once. */
function decisionAt(mean: number, uncertainty: number, band: ReadingFacts["band"]) {
  const facts: ReadingFacts = {
    tool: aTool(),
    band,
    mean,
    conformity: conformity(mean, uncertainty, band),
    guardBand: guardBand(uncertainty, SLIP_DEFAULTS.riskAllowed),
    levels: SLIP_DEFAULTS,
  };
  return READING_RULES.find(({ when }) => when(facts))?.decision;
}

const LIKELIER = ["reject", "not-proved", "accept"];
const rank = (decision: string | undefined) => LIKELIER.indexOf(decision ?? "");

describe("a decision on readings", () => {
  it("agrees with one worked out by independent libraries", () => {
    fc.assert(
      fc.property(requests, (request) => {
        const { readings, tool, band } = request;
        const mean = Number(meanOracle([...readings]));
        const typeA = Number(std(...readings)) / Math.sqrt(readings.length);
        const fromTool = (mean * tool.accuracyPercent) / 100 / (tool.k ?? Math.sqrt(3));
        const combined = Math.sqrt(typeA ** 2 + fromTool ** 2 + tool.resolution ** 2 / 12);
        const dof = (combined ** 4 * (readings.length - 1)) / typeA ** 4;
        const below = normalOracle(band.low, mean, combined);
        const above = 1 - normalOracle(band.high, mean, combined);

        const result = slipReading(request, SLIP_DEFAULTS);
        expect(result.mean).toBeCloseTo(mean, 10);
        expect(result.standardUncertainty).toBeCloseTo(combined, 10);
        expect(result.probabilityInBand).toBeCloseTo(1 - below - above, 8);
        if (dof < 1e8) expect(result.expanded).toBeCloseTo(tOracle(0.975, dof) * combined, 8);
        fc.pre([below, above].every((risk) => Math.abs(risk - 0.05) > 1e-9 && Math.abs(risk - 0.95) > 1e-9));
        const byHand = below < 0.05 && above < 0.05 ? "accept" : below > 0.95 || above > 0.95 ? "reject" : "not-proved";
        expect(result.decision).toBe(tool.kind === "click" ? "not-proved" : byHand);
      }),
    );
  });

  it("never gets likelier to accept as the mean moves further outside the band", () => {
    fc.assert(
      fc.property(bands, number(0.005, 2), number(0, 5), number(0, 5), fc.boolean(), (band, u, out, further, over) => {
        const at = (distance: number) => (over ? band.high + distance : band.low - distance);
        const near = conformity(at(out), u, band).inBand;
        expect(conformity(at(out + further), u, band).inBand).toBeLessThanOrEqual(near + 1e-12);
        expect(rank(decisionAt(at(out + further), u, band))).toBeLessThanOrEqual(rank(decisionAt(at(out), u, band)));
      }),
    );
  });

  it("never accepts a mean outside the band", () => {
    fc.assert(
      fc.property(bands, number(0.005, 2), number(0, 5), fc.boolean(), (band, u, out, over) => {
        expect(decisionAt(over ? band.high + out : band.low - out, u, band)).not.toBe("accept");
      }),
    );
  });

  it("still accepts an accepted mean with less uncertainty", () => {
    fc.assert(
      fc.property(bands, number(0.05, 0.95), number(0.005, 1), number(0.01, 1), (band, place, u, less) => {
        const mean = band.low + place * (band.high - band.low);
        fc.pre(decisionAt(mean, u, band) === "accept");
        expect(decisionAt(mean, u * less, band)).toBe("accept");
      }),
    );
  });

  it("accepts exactly between the limits drawn in by the guard band that it shows", () => {
    fc.assert(
      fc.property(requests, (request) => {
        fc.pre(request.tool.kind !== "click");
        const { mean, guardBand: inside, decision } = slipReading(request, SLIP_DEFAULTS);
        const room = Math.min(mean - request.band.low, request.band.high - mean) - inside;
        fc.pre(Math.abs(room) > 1e-9);
        expect(decision === "accept").toBe(room > 0);
      }),
    );
  });

  it("turns at the allowed risk and at the proof of the opposite, not before and not after", () => {
    // One-sided 95 % of the normal distribution, JCGM 106:2012, 7.3, Table 1: 1.64; the band is far wider than that.
    const band = { low: 10, high: 20 };
    const decisions = (u: number, z: number) => [decisionAt(20 + z * u, u, band), decisionAt(10 - z * u, u, band)];
    fc.assert(
      fc.property(number(0.005, 0.5), (u) => {
        expect(decisions(u, -1.6449)).toEqual(["accept", "accept"]);
        expect(decisions(u, -1.6448)).toEqual(["not-proved", "not-proved"]);
        expect(decisions(u, 1.6448)).toEqual(["not-proved", "not-proved"]);
        expect(decisions(u, 1.6449)).toEqual(["reject", "reject"]);
      }),
    );
  });

  it("does not depend on the order of the readings", () => {
    fc.assert(
      fc.property(requests, (request) => {
        const one = slipReading(request, SLIP_DEFAULTS);
        const other = slipReading({ ...request, readings: [...request.readings].reverse() }, SLIP_DEFAULTS);
        expect(other.mean).toBeCloseTo(one.mean, 11);
        expect(other.standardUncertainty).toBeCloseTo(one.standardUncertainty, 11);
      }),
    );
  });
});
