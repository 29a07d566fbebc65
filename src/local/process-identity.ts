import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { setTimeout as pause } from "node:timers/promises";
import * as z from "zod";

/** A process id alone may have passed to another program; with the moment it began it names one process for good. */
export const ProcessIdentity = z.strictObject({ pid: z.int().positive(), began: z.string() });
export type ProcessIdentity = z.infer<typeof ProcessIdentity>;

const LOOK_EVERY_MS = 20;
const PATIENCE_MS = 5_000;

/** The identity of a process that is alive, else `null`. */
export function identify(pid: number): ProcessIdentity | null {
  const began = process.platform === "linux" ? beganOnLinux(pid) : beganByPs(pid);
  return began === null ? null : { pid, began };
}

/** Is this very process still there? */
export const isAlive = (it: ProcessIdentity): boolean => identify(it.pid)?.began === it.began;

/** Kills this very process, and waits until it is gone. */
export async function endProcess(it: ProcessIdentity): Promise<void> {
  const giveUpAt = Date.now() + PATIENCE_MS;
  if (isAlive(it)) process.kill(it.pid, "SIGKILL");
  while (isAlive(it)) {
    if (Date.now() > giveUpAt) throw new Error(`Process ${it.pid} does not end.`);
    await pause(LOOK_EVERY_MS);
  }
}

/** Ticks from boot to start, field 22 of proc_pid_stat(5), with the boot they count from. A zombie (Z, X) is dead. */
function beganOnLinux(pid: number): string | null {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, "utf8");
    const fields = stat.slice(stat.lastIndexOf(")") + 2).split(" ");
    const [state = ""] = fields;
    const boot = readFileSync("/proc/sys/kernel/random/boot_id", "utf8").trim();
    return "ZX".includes(state) ? null : `${boot}/${fields[19]}`;
  } catch {
    return null;
  }
}

function beganByPs(pid: number): string | null {
  return spawnSync("ps", ["-o", "lstart=", "-p", String(pid)], { encoding: "utf8" }).stdout?.trim() || null;
}
