import { describe, expect, it } from "vitest";
import { ceramicIsPlausible } from "#shared/craft/ceramic.ts";
import { UNIT_FAMILIES } from "#shared/craft/vocabulary.ts";
import { done, FORGOTTEN, NEVER } from "#tests/support/a-craft.ts";

/** Last year in which ceramic washers are plausible: default of this project. */
const UNTIL = 2010;

describe("ceramic washers are plausible", () => {
  const rebuilds = [NEVER, FORGOTTEN, done(null, null)];
  const grid = UNIT_FAMILIES.flatMap((unitFamily) =>
    [2009, 2010, 2011, null].flatMap((builtYear) =>
      rebuilds.map((lastRebuild) => ({ unitFamily, builtYear, lastRebuild })),
    ),
  );

  it("only on a shim-stack or unknown unit, built in or before 2010 or nobody knows when, with no rebuild known", () => {
    const plausible = grid.filter((craft) => ceramicIsPlausible(craft, UNTIL));
    expect(plausible.map((it) => `${it.unitFamily} ${it.builtYear} ${it.lastRebuild.when}`)).toEqual(
      ["shim-stack", "unknown"].flatMap((family) =>
        ["2009", "2010", "null"].flatMap((year) => ["never", "unknown"].map((when) => `${family} ${year} ${when}`)),
      ),
    );
  });
});
