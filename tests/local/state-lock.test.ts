import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { afterEach, beforeEach, expect, it } from "vitest";
import { lockState } from "#src/local/state-lock.ts";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(`${tmpdir()}/lock-`);
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

it("is given to one at a time", () => {
  const first = lockState(folder);
  expect(lockState(folder)).toEqual({ ok: false, refusal: "taken" });
  if (first.ok) first.value.release();
  const next = lockState(folder);
  expect(next.ok).toBe(true);
  if (next.ok) next.value.release();
});

it("is free again as soon as its holder is killed", async () => {
  const script = `const { lockState } = await import(${JSON.stringify(import.meta.resolve("#src/local/state-lock.ts"))});
    globalThis.kept = lockState(${JSON.stringify(folder)});
    process.stdout.write(String(kept.ok));
    setInterval(() => {}, 1000);`;
  const holder = spawn(process.execPath, [
    "--disable-warning=ExperimentalWarning",
    "--input-type=module",
    "-e",
    script,
  ]);
  const [said] = await once(holder.stdout, "data");
  expect(String(said)).toBe("true");
  expect(lockState(folder).ok).toBe(false);
  holder.kill("SIGKILL");
  await once(holder, "exit");
  const next = lockState(folder);
  expect(next.ok).toBe(true);
  if (next.ok) next.value.release();
});
