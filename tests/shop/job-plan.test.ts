import { describe, expect, it } from "vitest";
import type { Answers } from "#shared/craft/vocabulary.ts";
import { planJob } from "#shared/shop/job-plan.ts";
import { partsFor } from "#shared/shop/parts.ts";
import { DEMO_PRICES, PriceSettingsSchema, quote } from "#shared/shop/prices.ts";
import { DEMO_SHOP, ShopSettingsSchema } from "#shared/shop/shop-settings.ts";
import { aCraft, modified, ON_DATE } from "#tests/support/a-craft.ts";

const planned = (craft: Partial<Answers>) => planJob(aCraft(craft), ON_DATE, DEMO_SHOP);
const names = (parts: readonly { readonly part: string }[]) => parts.map(({ part }) => part);

const REBUILD = ["spring-washers", "needle-bearings", "ball-bearings", "seal-set", "plate-screws"];

describe("the parts laid out", () => {
  it.each<[string, Parameters<typeof partsFor>[0], readonly string[]]>([
    [
      "a slip check of a set-nut unit",
      { work: "slip-check", unitFamily: "set-nut", ceramic: false },
      ["lock-nut", "thread-locker"],
    ],
    [
      "a slip check of a shim-stack unit, where shims set the slip",
      { work: "slip-check", unitFamily: "shim-stack", ceramic: false },
      ["shim-washers", "lock-nut", "thread-locker"],
    ],
    [
      "a rebuild: washers of metal",
      { work: "full-rebuild", unitFamily: "set-nut", ceramic: false },
      ["friction-washers", ...REBUILD, "lock-nut", "thread-locker"],
    ],
    [
      "a rebuild where the washers may be ceramic",
      { work: "full-rebuild", unitFamily: "shim-stack", ceramic: true },
      ["friction-washers-for-ceramic", ...REBUILD, "shim-washers", "lock-nut", "thread-locker"],
    ],
    [
      "a unit that must not be ridden: a gear besides; and shims, where the build is not known",
      { work: "stop-riding", unitFamily: "unknown", ceramic: false },
      ["friction-washers", ...REBUILD, "shim-washers", "lock-nut", "thread-locker", "drive-gear"],
    ],
  ])("for %s", (_because, needed, parts) => {
    expect(names(partsFor(needed))).toEqual(parts);
  });

  it("have a name, a count and a source", () => {
    const all = partsFor({ work: "stop-riding", unitFamily: "unknown", ceramic: true });
    for (const { name, count, source } of all) {
      expect(name).toMatch(/^[A-Z]/);
      expect(count).toBeGreaterThan(0);
      expect(["practice", "default"]).toContain(source.kind);
    }
  });
});

// Prices are those of the invented demo shop.
describe("the quote", () => {
  it.each([
    ["not-due", "set-nut", { work: "slip-check", minor: 12_500, from: false, usualDays: 3 }],
    ["slip-check", "shim-stack", { work: "slip-check", minor: 14_500, from: false, usualDays: 3 }],
    ["full-rebuild", "set-nut", { work: "full-rebuild", minor: 42_500, from: true, usualDays: 5 }],
    ["stop-riding", "unknown", { work: "stop-riding", minor: 59_500, from: true, usualDays: 8 }],
  ] as const)("for %s on a %s unit; from, where the bench may find more", (verdict, unitFamily, expected) => {
    expect(quote(verdict, unitFamily, DEMO_PRICES)).toEqual({ ...expected, currency: "USD" });
  });

  it("is in whole minor units of a currency", () => {
    const withPrice = (minor: number) => ({
      ...DEMO_PRICES,
      byJob: { ...DEMO_PRICES.byJob, "slip-check": { ...DEMO_PRICES.byJob["slip-check"], unknown: minor } },
    });
    expect(PriceSettingsSchema.safeParse(withPrice(0)).success).toBe(true);
    for (const minor of [-1, 0.5, 1e9]) expect(PriceSettingsSchema.safeParse(withPrice(minor)).success).toBe(false);
    for (const currency of ["usd", "US", "$"]) {
      expect(PriceSettingsSchema.safeParse({ ...DEMO_PRICES, currency }).success).toBe(false);
    }
  });

  it("is set for every job and every build", () => {
    const { "stop-riding": _, ...twoJobs } = DEMO_PRICES.byJob;
    expect(PriceSettingsSchema.safeParse({ ...DEMO_PRICES, byJob: twoJobs }).success).toBe(false);
  });
});

describe("the plan of a job", () => {
  it.each<[string, Partial<Answers>, string, number]>([
    ["nothing due: a slip check may still be booked", {}, "not-due", 60],
    ["a slip check", { engineHours: 100 }, "slip-check", 60],
    ["a rebuild", { symptoms: ["whine"] }, "full-rebuild", 240],
    ["stop, with an inspection first", { symptoms: ["grinding"] }, "stop-riding", 300],
  ])("follows from the verdict: %s", (_because, craft, verdict, benchMinutes) => {
    const plan = planned(craft);
    expect(plan.judgement.verdict).toBe(verdict);
    expect(plan.benchMinutes).toBe(benchMinutes);
    expect(plan.quote).toEqual(quote(plan.judgement.verdict, "set-nut", DEMO_PRICES));
  });

  it("lays out parts for ceramic washers where they may be ceramic", () => {
    const early = { unitFamily: "shim-stack", builtYear: 2009, washers: "unknown" } as const;
    expect(names(planned(early).parts)).toContain("friction-washers-for-ceramic");
    expect(names(planned({ ...early, washers: "metal" }).parts)).toContain("friction-washers");
  });

  it("plans the slip from the craft, not from the symptoms", () => {
    const modifiedCharger = { mods: modified({ charger: true, boostPsi: 15 }) };
    expect(planned(modifiedCharger).slip.target).toEqual({ value: 15, unit: "lbf.ft" });
    expect(planned({ ...modifiedCharger, symptoms: ["grinding"] }).slip).toEqual(planned(modifiedCharger).slip);
  });

  it("is the same for the same answers, day and settings", () => {
    expect(planned({ engineHours: null })).toEqual(planned({ engineHours: null }));
  });
});

describe("the demo shop", () => {
  it("keeps to the rules for settings", () => {
    expect(ShopSettingsSchema.parse(DEMO_SHOP)).toEqual(DEMO_SHOP);
  });

  it("can be no real shop: a number kept for fiction, a domain kept for examples", () => {
    expect(DEMO_SHOP.front.phone).toMatch(/555-01\d\d$/);
    expect(DEMO_SHOP.front.email).toMatch(/\.example$/);
  });
});
