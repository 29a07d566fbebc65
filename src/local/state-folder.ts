import { chmodSync, mkdirSync, readFileSync, realpathSync, renameSync, writeFileSync } from "node:fs";
import { resolve } from "node:path";
import { fileURLToPath } from "node:url";

/** The checkout's top folder. */
export const ROOT = fileURLToPath(new URL("../../", import.meta.url));

/** The real path of the folder that holds all state, made where it is missing and closed to other users. */
export function openStateFolder(asked: string | undefined = process.env["DATA_DIR"]): string {
  const folder = resolve(asked || `${ROOT}.data`);
  mkdirSync(folder, { recursive: true });
  chmodSync(folder, 0o700);
  return realpathSync(folder);
}

/** The parsed content of a small JSON file, or `null` where there is none that can be read. */
export function readJson(path: string): unknown {
  try {
    return JSON.parse(readFileSync(path, "utf8"));
  } catch {
    return null;
  }
}

/** Writes a small JSON file that only this user reads; by a rename, so that nobody ever sees half of it. */
export function writeJson(path: string, value: unknown): void {
  const draft = `${path}.${process.pid}`;
  writeFileSync(draft, `${JSON.stringify(value, null, 2)}\n`, { mode: 0o600 });
  renameSync(draft, path);
}
