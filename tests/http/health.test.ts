import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { VERSION } from "#src/http/health.ts";

it("tells the version of the package", () => {
  const { version } = JSON.parse(String(readFileSync("package.json")));
  expect(VERSION).toBe(version);
});
