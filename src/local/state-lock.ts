import { DatabaseSync } from "node:sqlite";
import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";

/** SQLITE_BUSY: another process holds the lock. */
const BUSY = 5;

/** Keep `release` reachable while the lock is wanted: a database that is garbage is closed. */
export type StateLock = { readonly release: () => void };

/**
 * Takes the state folder for this process alone. The lock is the file lock of an empty database with an open exclusive
 * transaction: the system releases it however the process ends, and there is no stale file to tidy up after a crash.
 */
export function lockState(folder: string): Outcome<StateLock, "taken"> {
  const database = new DatabaseSync(`${folder}/lock.sqlite`, { timeout: 0 });
  try {
    database.exec("PRAGMA journal_mode = MEMORY; BEGIN EXCLUSIVE");
    return accept({ release: () => database.close() });
  } catch (error) {
    database.close();
    if (error instanceof Error && "errcode" in error && error.errcode === BUSY) return refuse("taken");
    throw error;
  }
}
