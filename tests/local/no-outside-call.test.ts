import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { afterEach, beforeEach, expect, it } from "vitest";
import { startRuntimeProcess } from "#src/local/runtime-process.ts";
import { workerOptions } from "#src/local/worker-options.ts";
import { runNpm } from "#tests/support/npm-start.ts";

let folder: string;
let noting: { readonly NODE_OPTIONS: string; readonly NOTE_CALLS_IN: string };
const noted = () => readFileSync(noting.NOTE_CALLS_IN, "utf8");

beforeEach(() => {
  folder = mkdtempSync(`${tmpdir()}/shop-`);
  noting = {
    NODE_OPTIONS: `--import ${import.meta.resolve("#tests/support/note-calls.mjs")}`,
    NOTE_CALLS_IN: `${folder}/calls`,
  };
  writeFileSync(noting.NOTE_CALLS_IN, "");
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

it("calls no other machine from npm start to its end", async () => {
  const shop = runNpm(["start"], { ...noting, DATA_DIR: `${folder}/state`, PORT: "0", DEMO: "no" });
  await shop.untilUp();
  shop.child.kill("SIGTERM");
  await shop.ended;
  expect(noted()).toBe("");
});

it("would have noted such a call", async () => {
  const call = 'fetch("http://192.0.2.1:8080/").catch(() => process.exit(0)); setTimeout(() => process.exit(0), 500);';
  await once(spawn(process.execPath, ["-e", call], { env: { ...process.env, ...noting } }), "exit");
  expect(noted()).toBe("192.0.2.1\n");
});

it("lets the worker call nobody, not even its own machine", async () => {
  let calls = 0;
  const neighbour = createServer((_, answer) => {
    calls += 1;
    answer.end("reached");
  }).listen(0, "127.0.0.1");
  await once(neighbour, "listening");
  const { port } = neighbour.address() as AddressInfo;
  const script = `export class ShopLedger {}
    export default { fetch: () => fetch("http://127.0.0.1:${port}/") };`;
  const vars = { LINK_KEY: "", PUBLIC_ORIGIN: "", OPEN_HOLDS_PER_SOURCE: "" };
  const runtime = await startRuntimeProcess(
    workerOptions({ script, port: 0, stateFolder: folder, requestsPerMinute: 1, vars }),
    () => {},
  );
  const answer = await fetch(runtime.origin);
  expect([answer.status, await answer.text(), calls]).toEqual([502, "This worker calls nobody.", 0]);
  await runtime.end();
  neighbour.close();
});
