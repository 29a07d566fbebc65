import { cloudflareTest } from "@cloudflare/vitest-plugin";
import { defineConfig } from "vitest/config";
import "../../src/local/build-assets.mjs";

const ROOT = new URL("../..", import.meta.url).pathname;

/** Whole-server tests: a real server, a real browser or a killed runtime, one file at a time. */
const WHOLE_SERVER = ["tests/local/**/*.test.ts", "tests/browser/**/*.test.ts", "tests/faults/**/*.test.ts"];
const IN_WORKERD = "tests/**/*.worker.test.{ts,tsx}";

/** The platform's tools stay off the network, and read the worker's secret from here. */
Object.assign(process.env, {
  WRANGLER_SEND_METRICS: "false",
  WRANGLER_LOG_PATH: `${ROOT}/.wrangler/logs`,
  CLOUDFLARE_CF_FETCH_ENABLED: "false",
  LINK_KEY: "test-key-that-signs-nothing-outside-of-tests",
});

/** One seed for every law of a run, told once; SEED=… replays it. */
const seed = Number(process.env["SEED"] ?? Math.floor(Math.random() * 2 ** 31));
if (process.env["SEED"] === undefined) console.log(`Laws are tried from SEED=${seed}`);
process.env["SEED"] = String(seed);

const everywhere = {
  root: ROOT,
  provide: { seed },
  restoreMocks: true,
  // A law tries many cases, and a machine that is busy with other things needs its time.
  testTimeout: 60_000,
  setupFiles: ["tests/support/use-seed.ts"],
};

export default defineConfig({
  root: ROOT,
  test: {
    projects: [
      {
        root: ROOT,
        test: {
          ...everywhere,
          name: "pure",
          include: ["tests/**/*.test.{ts,tsx}"],
          exclude: [IN_WORKERD, ...WHOLE_SERVER],
        },
      },
      {
        root: ROOT,
        plugins: [
          cloudflareTest({
            wrangler: { configPath: `${ROOT}/wrangler.toml` },
          }),
        ],
        test: { ...everywhere, name: "worker", include: [IN_WORKERD] },
      },
      {
        root: ROOT,
        test: {
          ...everywhere,
          name: "server",
          include: WHOLE_SERVER,
          // After all others, so that they do not slow down what a server or a browser waits for.
          sequence: { groupOrder: 1 },
          fileParallelism: false,
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
