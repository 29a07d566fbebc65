import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { delimiter, resolve } from "node:path";
import { until } from "#tests/support/until.ts";

const ROOT = resolve(import.meta.dirname, "../..");

export type NpmRun = {
  readonly child: ChildProcess;
  readonly pid: number;
  readonly printed: () => string;
  /** Waits until it has printed its last line of a good start; throws where it ended before. */
  readonly untilUp: () => Promise<void>;
  /** The exit code, or the signal that ended it. */
  readonly ended: Promise<number | string>;
};

/** `npm …` as a person runs it: with the Node of the machine, in a process group of its own. */
export function runNpm(args: readonly string[], vars: Readonly<Record<string, string>>): NpmRun {
  const child = spawn("npm", args, {
    cwd: ROOT,
    env: { ...plainEnvironment(), ...vars },
    detached: true,
    stdio: "pipe",
  });
  let text = "";
  for (const stream of [child.stdout, child.stderr]) stream.on("data", (part) => (text += part));
  const ended = once(child, "close").then(([code, signal]) => code ?? signal);
  if (child.pid === undefined) throw new Error("npm could not be started.");
  return {
    child,
    pid: child.pid,
    printed: () => text,
    ended,
    untilUp: async () => {
      await until(() => text.includes("To end:") || child.exitCode !== null, 60_000);
      if (child.exitCode !== null) throw new Error(`npm ended with ${child.exitCode}:\n${text}`);
    },
  };
}

/** Without what npm and the test runner added to ours. */
function plainEnvironment(): NodeJS.ProcessEnv {
  const path = (process.env["PATH"] ?? "").split(delimiter).filter((folder) => !folder.includes("node_modules"));
  const env: Record<string, string | undefined> = { ...process.env, PATH: path.join(delimiter) };
  for (const name of Object.keys(env)) if (/^(npm_|NODE|VITEST|PORT$|DATA_DIR$|DEMO$)/i.test(name)) delete env[name];
  return env as NodeJS.ProcessEnv;
}
