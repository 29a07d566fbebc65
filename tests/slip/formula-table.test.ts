import { existsSync, readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { FORMULAS, NOT_FORMULAS } from "#tests/slip/formula-table.ts";

const ROOT = new URL("../../", import.meta.url).pathname;
const FOLDERS = ["units", "measurement", "life", "slip"];

type Exported = { readonly module: string; readonly name: string };

/** Every function that a module of these folders gives away, as it is when it runs. */
async function exportedFunctions(): Promise<readonly Exported[]> {
  const modules = FOLDERS.flatMap((folder) =>
    readdirSync(`${ROOT}shared/${folder}`)
      .filter((file) => file.endsWith(".ts"))
      .map((file) => `${folder}/${file.slice(0, -3)}`),
  );
  const loaded = await Promise.all(
    modules.map(async (module) => ({
      module,
      exports: (await import(`${ROOT}shared/${module}.ts`)) as Record<string, unknown>,
    })),
  );
  return loaded.flatMap(({ module, exports }) =>
    Object.entries(exports)
      .filter(([, value]) => typeof value === "function")
      .map(([name]) => ({ module, name })),
  );
}

/** All files of the project that a file imports, and theirs. */
function reached(file: string, seen = new Set<string>()): ReadonlySet<string> {
  if (seen.has(file)) return seen;
  seen.add(file);
  const text = readFileSync(`${ROOT}${file}`, "utf8");
  for (const [, imported] of text.matchAll(/from "#((?:shared|tests)\/[^"]+)"/g)) reached(imported!, seen);
  return seen;
}

const keyOf = ({ module, name }: Exported): string => `${module} ${name}`;

describe("the table of formulas", () => {
  it("has a row for every function that units, measurement, life and slip export, and for none that they do not", async () => {
    const listed = [...FORMULAS.map(keyOf), ...Object.keys(NOT_FORMULAS)];
    expect(listed.toSorted()).toEqual((await exportedFunctions()).map(keyOf).toSorted());
    expect(new Set(listed).size).toBe(listed.length);
  });

  it("names for every formula a test that reaches its module", () => {
    for (const { module, name, test, source, checked } of FORMULAS) {
      expect(existsSync(`${ROOT}${test}`), `${test} of ${name}`).toBe(true);
      expect(reached(test), `${test} of ${name}`).toContain(`shared/${module}.ts`);
      expect(Math.min(source.length, checked.length), name).toBeGreaterThan(2);
    }
  });

  it("finds a doc comment above every one of them", () => {
    for (const { module, name } of FORMULAS) {
      const text = readFileSync(`${ROOT}shared/${module}.ts`, "utf8");
      expect(text, `${module} ${name}`).toMatch(new RegExp(`\\*/\\nexport (const|function) ${name}\\b`));
    }
  });
});
