import { mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { DatabaseSync } from "node:sqlite";
import { afterAll, expect, it } from "vitest";
import { demoOwners } from "#src/local/demo-owners.ts";
import { startShop } from "#tests/support/running-shop.ts";

const dataDir = mkdtempSync(`${tmpdir()}/shop-`);
afterAll(() => rmSync(dataDir, { recursive: true, force: true }));

const STATES = ["booked", "on-bench", "received", "booked"];
const OWNERS = demoOwners(() => "2027-05-01").map(({ contact, verdict }, place) => ({
  name: contact.name,
  verdict,
  state: STATES[place],
}));

it("books the demo owners once and begins a day at the shop, even where a start was cut short before that was noted", async () => {
  expect(await bookedAfterAStart()).toEqual(OWNERS);
  rmSync(`${dataDir}/demo-seeded`);
  expect(await bookedAfterAStart()).toEqual(OWNERS);
  expect(await bookedAfterAStart()).toEqual(OWNERS);
});

it("uses only names, numbers and domains that belong to nobody", () => {
  for (const { contact } of demoOwners(() => "2027-05-01")) {
    expect(contact.phone ?? "+1 202-555-0100").toMatch(/^\+1 202-555-01\d\d$/);
    expect(contact.email ?? "@example.com").toMatch(/@example\.com$/);
  }
});

/** What the shop's database holds after a start and an end. */
async function bookedAfterAStart(): Promise<readonly unknown[]> {
  const shop = await startShop({ dataDir, vars: { DEMO: "yes" } });
  await shop.stop();
  expect(shop.printed()).not.toContain("not as it should be");
  const folder = `${dataDir}/state/do/slipbench-ShopLedger`;
  const file = readdirSync(folder).find((name) => /^[0-9a-f]{64}\.sqlite$/.test(name));
  const database = new DatabaseSync(`${folder}/${file}`);
  const rows = database
    .prepare("SELECT name, verdict, state FROM job JOIN owner ON job.owner = owner.id ORDER BY serial")
    .all();
  database.close();
  return rows.map((row) => ({ ...row }));
}
