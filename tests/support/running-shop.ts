import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { fileURLToPath } from "node:url";
import { endProcess } from "#src/local/process-identity.ts";
import { lastRunning } from "#src/local/running.ts";
import { until } from "#tests/support/until.ts";

const START = fileURLToPath(import.meta.resolve("#src/local/start.ts"));

/** Any free port, no demo owners, and no cap that a test could run into without meaning to. */
const QUIET_AND_WIDE = { PORT: "0", DEMO: "no", REQUESTS_PER_MINUTE: "1000000", OPEN_HOLDS_PER_SOURCE: "1000000" };

/** A whole server in a process of its own, as `npm start` runs it. */
export type RunningShop = {
  readonly origin: string;
  readonly signInLink: string;
  readonly dataDir: string;
  /** All that it has printed so far. */
  readonly printed: () => string;
  /** Ends it in good order; its state goes with it unless the test brought the folder. */
  readonly stop: () => Promise<void>;
  /** SIGKILL to the runtime (workerd), and waits until it is gone; the server starts another after a second. */
  readonly killRuntime: () => Promise<void>;
  /** Waits until it answers again. */
  readonly untilUp: () => Promise<void>;
  readonly runtimePid: () => number;
  /** Settles with the exit code when the server has ended, for whatever reason. */
  readonly ended: Promise<number | null>;
};

/** `vars` are environment variables of the start, such as `DEMO: "yes"` or `OPEN_HOLDS_PER_SOURCE: "5"`. */
export async function startShop(
  asked: { readonly dataDir?: string; readonly vars?: Readonly<Record<string, string>> } = {},
): Promise<RunningShop> {
  const dataDir = asked.dataDir ?? mkdtempSync(`${tmpdir()}/shop-`);
  const child = spawn(process.execPath, ["--disable-warning=ExperimentalWarning", START], {
    env: { ...process.env, ...QUIET_AND_WIDE, ...asked.vars, DATA_DIR: dataDir },
    stdio: ["ignore", "pipe", "pipe", "ipc"],
  });
  const ended = once(child, "exit").then(([code]) => code as number | null);
  const printed = collect(child);
  await until(() => printed().includes("To end:") || child.exitCode !== null, 60_000);
  const [, origin] = /For owners: (\S+)\//.exec(printed()) ?? [];
  const [, signInLink] = /Shop sign-in.*?(http\S+)/.exec(printed()) ?? [];
  if (origin === undefined || signInLink === undefined) throw new Error(`The shop did not start:\n${printed()}`);
  const runtime = () => lastRunning(dataDir)?.runtime ?? fail(`No runtime is noted in ${dataDir}.`);
  return {
    origin,
    signInLink,
    dataDir,
    printed,
    stop: async () => {
      child.kill("SIGTERM");
      await ended;
      if (asked.dataDir === undefined) rmSync(dataDir, { recursive: true, force: true });
    },
    killRuntime: () => endProcess(runtime()),
    untilUp: () => until(() => answers(origin), 30_000),
    runtimePid: () => runtime().pid,
    ended,
  };
}

function collect(child: ChildProcess): () => string {
  let text = "";
  for (const stream of [child.stdout, child.stderr]) stream?.on("data", (part) => (text += part));
  return () => text;
}

async function answers(origin: string): Promise<boolean> {
  const response = await fetch(`${origin}/healthz`).catch(() => null);
  return response?.ok === true;
}

function fail(sentence: string): never {
  throw new Error(sentence);
}
