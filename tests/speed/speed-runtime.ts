import { build } from "esbuild";
import { Log, LogLevel } from "miniflare";
import { startRuntimeProcess } from "#src/local/runtime-process.ts";
import { ROOT } from "#src/local/state-folder.ts";
import { COMPATIBILITY_DATE } from "#src/local/worker-options.ts";
import type { Ask } from "#tests/speed/speed-worker.ts";

const NAME = "speed";

/** The real ledger and a bare object beside it in one runtime, with their state on disk. */
export type SpeedRuntime = {
  /** Milliseconds that the worker needed for the step. */
  readonly ask: (ask: Ask) => Promise<number>;
  readonly end: () => Promise<void>;
};

export async function startSpeedRuntime(stateFolder: string): Promise<SpeedRuntime> {
  const script = await bundle();
  const object = (exportName: string) => ({ type: "durable-object" as const, worker: NAME, exportName });
  const stored = { type: "durable-object", storage: "sqlite" } as const;
  const { origin, end } = await startRuntimeProcess(
    {
      host: "127.0.0.1",
      port: 0,
      cf: false,
      telemetry: { enabled: false },
      enableDevRegistry: false,
      unsafeLocalExplorer: false,
      unsafeObservability: false,
      logRequests: false,
      log: new Log(LogLevel.ERROR),
      resourcePersistencePath: stateFolder,
      workers: [
        {
          config: {
            name: NAME,
            compatibilityDate: COMPATIBILITY_DATE,
            manifest: { mainModule: "worker.mjs", modules: { "worker.mjs": { type: "esm", contents: script } } },
            exports: { FilledLedger: stored, BareObject: stored },
            env: {
              SHOP: object("FilledLedger"),
              BARE: object("BareObject"),
              BOARD: { type: "kv", id: "board" },
            },
          },
        },
      ],
    },
    ({ pid }) => process.send?.({ runtimePid: pid }),
  );
  return {
    ask: async (ask) => {
      const response = await fetch(origin, { method: "POST", body: JSON.stringify(ask) });
      if (!response.ok) throw new Error(`${ask.step} of ${ask.shop}: ${(await response.text()).slice(0, 1000)}`);
      return (await response.json()) as number;
    },
    end,
  };
}

async function bundle(): Promise<string> {
  const { outputFiles } = await build({
    absWorkingDir: ROOT,
    entryPoints: ["tests/speed/speed-worker.ts"],
    bundle: true,
    write: false,
    format: "esm",
    target: "es2024",
    conditions: ["workerd", "worker", "browser"],
    external: ["cloudflare:*", "node:*"],
    logLevel: "warning",
  });
  const [worker] = outputFiles;
  if (worker === undefined) throw new Error("The bundler gave no worker.");
  return worker.text;
}
