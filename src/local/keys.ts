import { randomBytes } from "node:crypto";
import { existsSync } from "node:fs";
import * as z from "zod";
import { readJson, writeJson } from "#src/local/state-folder.ts";

/** 256 bits, the output length of the HMAC that it keys. */
const KEY_BYTES = 32;

const Keys = z.strictObject({ LINK_KEY: z.string().min(32) });
export type Keys = z.infer<typeof Keys>;

/** The keys of this state folder; made at its first start. */
export function keysOf(folder: string): Keys {
  const path = `${folder}/keys.json`;
  if (!existsSync(path)) writeJson(path, { LINK_KEY: randomBytes(KEY_BYTES).toString("base64url") });
  const parsed = Keys.safeParse(readJson(path));
  if (parsed.success) return parsed.data;
  throw new Error(`${path} is damaged: it must hold {"LINK_KEY": "<32 or more characters>"}.`);
}
