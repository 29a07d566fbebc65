import { mkdtempSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { readToken } from "#src/http/signed-token.ts";
import { identify, isAlive, type ProcessIdentity } from "#src/local/process-identity.ts";
import { lastRunning } from "#src/local/running.ts";
import { byName } from "#src/local/sign-in-link.ts";
import { type NpmRun, runNpm } from "#tests/support/npm-start.ts";
import { familyOf, memberRunning } from "#tests/support/process-family.ts";
import { until } from "#tests/support/until.ts";

let dataDir: string;
let shop: NpmRun;
let family: readonly ProcessIdentity[];

const npm = (...args: string[]) => runNpm(args, { DATA_DIR: dataDir, PORT: "0", DEMO: "no" });
const noneIsLeft = () => until(() => !family.some(isAlive));
const originOf = (run: NpmRun) => /For owners: (\S+)\//.exec(run.printed())?.[1];
const healthOf = async (run: NpmRun) => (await fetch(`${originOf(run)}/healthz`)).status;

async function start(): Promise<void> {
  shop = npm("start");
  await shop.untilUp();
  family = familyOf(shop.pid);
}

async function startAnew(): Promise<void> {
  dataDir = mkdtempSync(`${tmpdir()}/shop-`);
  await start();
}

async function clear(): Promise<void> {
  for (const it of [...family, ...familyOf(shop.pid)]) if (isAlive(it)) process.kill(it.pid, "SIGKILL");
  await shop.ended;
  rmSync(dataDir, { recursive: true, force: true });
}

describe("npm start", () => {
  beforeAll(startAnew);
  afterAll(clear);

  it("answers at the address that it prints", async () => {
    expect(await healthOf(shop)).toBe(200);
  });

  it("prints a sign-in link, and npm run sign-in another, signed with the key of this state", async () => {
    const again = npm("run", "sign-in");
    expect(await again.ended).toBe(0);
    const { LINK_KEY } = JSON.parse(readFileSync(`${dataDir}/keys.json`, "utf8"));
    const nonces = [];
    for (const { printed } of [shop, again]) {
      const [, origin, token = ""] = /(http\S+)\/shop\/sign-in\/(\S+)/.exec(printed()) ?? [];
      expect(origin).toBe(byName(originOf(shop) ?? ""));
      const inNineMinutes = Date.now() + 9 * 60_000;
      const read = await readToken(LINK_KEY, token, { purpose: "sign-in", now: inNineMinutes });
      expect(read.ok).toBe(true);
      if (read.ok) nonces.push(read.value.nonce);
    }
    expect(new Set(nonces).size).toBe(2);
  });

  it("keeps its key to the user who started it", () => {
    expect(statSync(`${dataDir}/keys.json`).mode & 0o777).toBe(0o600);
    expect(statSync(dataDir).mode & 0o777).toBe(0o700);
  });

  it("refuses a second start on the same state, naming folder and process", async () => {
    const second = npm("start");
    expect(await second.ended).toBe(1);
    const holder = lastRunning(dataDir)?.holder.pid;
    expect(second.printed()).toContain(`A shop runs on the state in ${dataDir} already, as process ${holder}.`);
    expect(await healthOf(shop)).toBe(200);
  });

  it("refuses a port that is in use", async () => {
    const port = new URL(originOf(shop) ?? "").port;
    const elsewhere = `${dataDir}/second`;
    const second = runNpm(["start"], { DATA_DIR: elsewhere, PORT: port, DEMO: "no" });
    expect(await second.ended).toBe(1);
    expect(second.printed()).toContain(`Port ${port} is in use by another program`);
  });
});

describe("an end leaves no process behind", () => {
  beforeEach(startAnew);
  afterEach(clear);

  it("on SIGTERM to npm", async () => {
    shop.child.kill("SIGTERM");
    await shop.ended;
    await noneIsLeft();
  });

  it("on Ctrl-C, which goes to the whole group, and nobody takes it for an accident", async () => {
    process.kill(-shop.pid, "SIGINT");
    await shop.ended;
    await noneIsLeft();
    expect(shop.printed()).not.toContain("unexpectedly");
  });

  it.each(["src/local/start.ts", "src/local/begin.mjs"])("on SIGKILL to %s", async (file) => {
    process.kill(memberRunning(family, file).pid, "SIGKILL");
    await noneIsLeft();
    await start();
    expect(await healthOf(shop)).toBe(200);
  });

  it("or else the next start ends the runtime, before it opens the state", async () => {
    const begin = memberRunning(family, "src/local/begin.mjs");
    const left = lastRunning(dataDir)?.runtime ?? null;
    process.kill(begin.pid, "SIGSTOP");
    process.kill(memberRunning(family, "src/local/start.ts").pid, "SIGKILL");
    process.kill(begin.pid, "SIGKILL");
    await shop.ended;
    expect(left).not.toBeNull();
    expect(identify(left!.pid)).toEqual(left);
    await start();
    expect(isAlive(left!)).toBe(false);
    expect(await healthOf(shop)).toBe(200);
  });
});
