import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { identify, type ProcessIdentity } from "#src/local/process-identity.ts";

/** A process and all that it started, as far as their parents still live. */
export function familyOf(pid: number): readonly ProcessIdentity[] {
  const parents = process.platform === "linux" ? parentsByProc() : parentsByPs();
  const family = [pid];
  for (const member of family) {
    for (const [child, parent] of parents) if (parent === member) family.push(child);
  }
  return family.map(identify).filter((it) => it !== null);
}

/** The member of a family whose command line holds this text. */
export function memberRunning(family: readonly ProcessIdentity[], text: string): ProcessIdentity {
  const found = family.filter(({ pid }) => commandLine(pid).includes(text)).at(-1);
  if (found === undefined) throw new Error(`None of ${family.map(({ pid }) => commandLine(pid))} runs ${text}.`);
  return found;
}

function commandLine(pid: number): string {
  return spawnSync("ps", ["-o", "args=", "-p", String(pid)], { encoding: "utf8" }).stdout.trim();
}

type Parents = readonly (readonly [child: number, parent: number])[];

function parentsByProc(): Parents {
  return readdirSync("/proc")
    .filter((name) => /^\d+$/.test(name))
    .flatMap((pid) => {
      const parent = /^PPid:\s*(\d+)$/m.exec(read(`/proc/${pid}/status`))?.[1];
      return parent === undefined ? [] : [[Number(pid), Number(parent)] as const];
    });
}

function parentsByPs(): Parents {
  const lines = spawnSync("ps", ["-axo", "pid=,ppid="], { encoding: "utf8" }).stdout.trim().split("\n");
  return lines.map((line) => line.trim().split(/\s+/).map(Number) as [number, number]);
}

function read(path: string): string {
  try {
    return readFileSync(path, "utf8");
  } catch {
    return "";
  }
}
