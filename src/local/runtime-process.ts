import type { ChildProcess } from "node:child_process";
import { subscribe, unsubscribe } from "node:diagnostics_channel";
import { setTimeout as pause } from "node:timers/promises";
import { Miniflare, type MiniflareOptions } from "miniflare";
import { identify, type ProcessIdentity } from "#src/local/process-identity.ts";

/** A signal to a whole process group reaches the runtime before us: only after this is its end a surprise. */
const MAY_BE_OUR_END_MS = 100;
const SIGNALS = ["SIGINT", "SIGTERM", "SIGHUP"] as const;

export type RuntimeProcess = {
  readonly origin: string;
  /** Settles with the milliseconds it lived when it ends without being asked to; else never. */
  readonly died: Promise<number>;
  readonly end: () => Promise<void>;
};

/** Starts one runtime and waits until it answers. `onStart` hears of its process before that. */
export async function startRuntimeProcess(
  options: MiniflareOptions,
  onStart: (runtime: ProcessIdentity) => void,
): Promise<RuntimeProcess> {
  const beganAt = Date.now();
  const death = Promise.withResolvers<number>();
  let state: "starting" | "up" | "ending" = "starting";
  const stopListening = onNextChild((child) => {
    const identity = child.pid === undefined ? null : identify(child.pid);
    if (identity !== null) onStart(identity);
    child.once("exit", () => void (state === "up" && afterDeath()));
  });
  const miniflare = withoutItsSignalHandlers(() => new Miniflare(options));
  try {
    const { origin } = await miniflare.ready;
    state = "up";
    return { origin, died: death.promise, end };
  } catch (error) {
    await end().catch(() => {});
    throw error;
  } finally {
    stopListening();
  }

  async function end(): Promise<void> {
    state = "ending";
    await miniflare.dispose();
  }

  /** Disposes at once: Miniflare restarts a dead runtime without pause or end, but not where it is being disposed of. */
  async function afterDeath(): Promise<void> {
    const disposed = miniflare.dispose().catch(() => {});
    await pause(MAY_BE_OUR_END_MS);
    await disposed;
    if (state === "up") death.resolve(Date.now() - beganAt);
  }
}

/** Miniflare keeps its child to itself, so we listen where Node tells of every child process. */
function onNextChild(listener: (child: ChildProcess) => void): () => void {
  const hear = (message: unknown) => {
    const { process: child } = message as { readonly process: ChildProcess };
    child.once("spawn", () => listener(child));
  };
  subscribe("child_process", hear);
  return () => unsubscribe("child_process", hear);
}

/** Its handlers would end this process before our own have tidied up; its exit handler stays. */
function withoutItsSignalHandlers<Made>(make: () => Made): Made {
  const before = SIGNALS.map((signal) => process.listeners(signal));
  const made = make();
  for (const [index, signal] of SIGNALS.entries()) {
    for (const listener of process.listeners(signal)) {
      if (!before[index]?.includes(listener)) process.removeListener(signal, listener);
    }
  }
  return made;
}
