import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { gzipSync } from "node:zlib";
import { ROOT } from "#src/local/state-folder.ts";
import { atMostKilobytes, type Measured } from "#tests/speed/measured.ts";

/** The worker as it would be deployed with the project's own configuration, packed by `wrangler deploy --dry-run`. */
export function measureWorker(): readonly Measured[] {
  const folder = mkdtempSync(`${tmpdir()}/worker-`);
  try {
    const args = ["deploy", "--dry-run", "--outdir", folder, "--config", `${ROOT}wrangler.toml`];
    const run = spawnSync("wrangler", args, { cwd: ROOT, encoding: "utf8" });
    if (run.status !== 0) throw new Error(`wrangler could not pack the worker:\n${run.stdout}${run.stderr}`);
    const packed = gzipSync(readFileSync(`${folder}/worker.js`), { level: 9 }).length;
    return [atMostKilobytes("worker bundle as wrangler would deploy it, gzip -9", packed, 150)];
  } finally {
    rmSync(folder, { recursive: true });
  }
}
