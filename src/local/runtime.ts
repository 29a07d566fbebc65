import { setTimeout as pause } from "node:timers/promises";
import type { MiniflareOptions } from "miniflare";
import type { ProcessIdentity } from "#src/local/process-identity.ts";
import { startRuntimeProcess } from "#src/local/runtime-process.ts";

const BEFORE_RESTART_MS = 1_000;
const MOST_RESTARTS = 5;
/** A runtime that lived as long as this was well: its end starts the count anew. */
const WELL_AFTER_MS = 10_000;

export type RuntimeNeeds = {
  readonly optionsFor: (port: number) => MiniflareOptions;
  /** 0 = any free one. */
  readonly port: number;
  /** Called whenever a runtime process was started, before it answers. */
  readonly onStart: (runtime: ProcessIdentity) => void;
  readonly say: (sentence: string) => void;
  /** Called at most once: it does not stay up. */
  readonly onGiveUp: () => void;
};

export type Runtime = { readonly origin: string; readonly end: () => Promise<void> };

/** Runs the worker, and runs it again on the same port when its runtime dies. Throws where even the first start fails. */
export async function startRuntime(needs: RuntimeNeeds): Promise<Runtime> {
  let ending = false;
  let current = await startRuntimeProcess(needs.optionsFor(needs.port), needs.onStart);
  const { origin } = current;
  void keepUp();
  return {
    origin,
    end: async () => {
      ending = true;
      await current.end();
    },
  };

  async function keepUp(): Promise<void> {
    let restarts = 0;
    while (!ending) {
      const livedMs = await current.died;
      if (livedMs > WELL_AFTER_MS) restarts = 0;
      needs.say("The runtime ended unexpectedly. All that was confirmed is on disk. Starting it again.");
      let next = null;
      while (next === null) {
        if (restarts === MOST_RESTARTS) {
          needs.say(`The runtime does not stay up: it was restarted ${MOST_RESTARTS} times in a row.`);
          return needs.onGiveUp();
        }
        restarts += 1;
        await pause(BEFORE_RESTART_MS);
        if (ending) return;
        next = await startRuntimeProcess(needs.optionsFor(Number(new URL(origin).port)), needs.onStart).catch(tell);
      }
      current = next;
    }
    await current.end();
  }

  function tell(error: unknown): null {
    needs.say(`The runtime did not start: ${error instanceof Error ? error.message : String(error)}`);
    return null;
  }
}
