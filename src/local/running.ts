import { rmSync } from "node:fs";
import * as z from "zod";
import { isAlive, ProcessIdentity } from "#src/local/process-identity.ts";
import { readJson, writeJson } from "#src/local/state-folder.ts";

/** Who holds a state folder, where it answers, and the runtime that it started: written for the next to come. */
const Running = z.strictObject({
  holder: ProcessIdentity,
  origin: z.string().nullable(),
  runtime: ProcessIdentity.nullable(),
});
export type Running = z.infer<typeof Running>;

const pathIn = (folder: string): string => `${folder}/running.json`;

/** What the last holder wrote, alive or not. */
export function lastRunning(folder: string): Running | null {
  const parsed = Running.safeParse(readJson(pathIn(folder)));
  return parsed.success ? parsed.data : null;
}

/** Where the shop of this folder answers just now, or `null` while it does not run. */
export function originNow(folder: string): string | null {
  const running = lastRunning(folder);
  return running !== null && isAlive(running.holder) ? running.origin : null;
}

export const noteRunning = (folder: string, running: Running): void => writeJson(pathIn(folder), running);
export const forgetRunning = (folder: string): void => rmSync(pathIn(folder), { force: true });
