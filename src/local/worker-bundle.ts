import { build } from "esbuild";
import "#src/local/build-assets.mjs";
import { ROOT } from "#src/local/state-folder.ts";

/** The worker as one module, as it would be put on the edge. */
export async function bundleWorker(): Promise<string> {
  const { outputFiles } = await build({
    absWorkingDir: ROOT,
    entryPoints: ["src/worker.ts"],
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
