import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { afterEach, expect, it } from "vitest";
import { identify } from "#src/local/process-identity.ts";
import { byName } from "#src/local/sign-in-link.ts";
import { type RunningShop, startShop } from "#tests/support/running-shop.ts";
import { until } from "#tests/support/until.ts";

let shop: RunningShop | null = null;
afterEach(async () => {
  await shop?.stop();
  shop = null;
});

it("answers, prints a sign-in link on its own address, and takes its state with it", async () => {
  shop = await startShop();
  const runtime = shop.runtimePid();
  expect(await (await fetch(`${shop.origin}/healthz`)).json()).toMatchObject({ ok: true });
  expect(shop.signInLink).toMatch(new RegExp(`^${byName(shop.origin)}/shop/sign-in/[\\w-]+\\.[\\w-]{43}$`));
  await shop.stop();
  expect(identify(runtime)).toBeNull();
  expect(existsSync(shop.dataDir)).toBe(false);
});

it("comes back on the same port when its runtime is killed, and says so", async () => {
  shop = await startShop();
  const first = shop.runtimePid();
  await shop.killRuntime();
  await shop.untilUp();
  expect(shop.runtimePid()).not.toBe(first);
  expect(shop.printed()).toContain("The runtime ended unexpectedly.");
});

it("gives up with an exit code when its runtime does not stay up", async () => {
  const dataDir = mkdtempSync(`${tmpdir()}/shop-`);
  shop = await startShop({ dataDir });
  const killed = new Set<number>();
  for (let restart = 0; restart <= 5; restart += 1) {
    await until(() => !killed.has(shop!.runtimePid()));
    await shop.untilUp();
    killed.add(shop.runtimePid());
    await shop.killRuntime();
  }
  expect(await shop.ended).toBe(1);
  expect(shop.printed()).toContain("does not stay up");
  expect(killed.size).toBe(6);
  rmSync(dataDir, { recursive: true, force: true });
});
