import { Log, LogLevel, type MiniflareOptions, Response } from "miniflare";

/** These four say the same as wrangler.toml; a test holds them together. */
export const WORKER_NAME = "slipbench";
export const COMPATIBILITY_DATE = "2026-10-01";
export const LEDGER_CLASS = "ShopLedger";
export const REQUEST_LIMIT = { limit: 300, period: 60 } as const;

/** The text bindings of the worker. */
export type WorkerVars = {
  readonly LINK_KEY: string;
  readonly PUBLIC_ORIGIN: string;
  readonly OPEN_HOLDS_PER_SOURCE: string;
};

export type WorkerSetup = {
  readonly script: string;
  readonly port: number;
  readonly stateFolder: string;
  readonly requestsPerMinute: number;
  readonly vars: WorkerVars;
};

/** One worker on the loopback address with its state on disk; nothing looks beyond this machine. */
export function workerOptions({ script, port, stateFolder, requestsPerMinute, vars }: WorkerSetup): MiniflareOptions {
  return {
    host: "127.0.0.1",
    port,
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
          name: WORKER_NAME,
          compatibilityDate: COMPATIBILITY_DATE,
          manifest: { mainModule: "worker.mjs", modules: { "worker.mjs": { type: "esm", contents: script } } },
          // The object's id, and so the file of its data, follows from the worker's and the class's name.
          exports: { [LEDGER_CLASS]: { type: "durable-object", storage: "sqlite" } },
          env: {
            SHOP: { type: "durable-object", worker: WORKER_NAME, exportName: LEDGER_CLASS },
            BOARD: { type: "kv", id: "board" },
            PHOTOS: { type: "r2", name: "photos" },
            REQUEST_LIMIT: {
              type: "rate-limit",
              namespace: "1001",
              simple: { limit: requestsPerMinute, period: REQUEST_LIMIT.period },
            },
            ...Object.fromEntries(Object.entries(vars).map(([name, value]) => [name, { type: "text", value }])),
          },
        },
        dev: {
          outboundService: {
            type: "fetcher",
            handler: () => new Response("This worker calls nobody.", { status: 502 }),
          },
        },
      },
    ],
  };
}
