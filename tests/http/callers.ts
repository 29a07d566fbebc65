import { env } from "cloudflare:workers";
import { r2PhotoStore } from "#src/adapters/photo-store.ts";
import { aJob } from "#tests/bench/a-job.ts";
import { aBrowser, aManager, atWork } from "#tests/bench/staff-at-work.ts";
import { anAskWish, receiveAndStart } from "#tests/ledger/an-approval.ts";

/** Who may come to an address, from nobody to a manager. */
export const CALLERS = ["stranger", "owner of another job", "owner", "bench", "manager"] as const;
export type Caller = (typeof CALLERS)[number];

/** What is the owner's alone, and the shop's: none of it may be in an answer to anybody else. */
export const SECRETS = ["Ysolde", "2025550177", "ysolde@shore.example", "13 Gannet Steps", "worn-through-note"];

/** Two jobs of two owners, each on the bench with a photo, and the owner asked for more work. */
export async function twoJobs() {
  const mine = await aJob({
    contact: { name: "Ysolde Finch", phone: "+12025550177", email: "ysolde@shore.example" },
    returnTo: { lines: ["13 Gannet Steps"], postcode: "00002", region: "Ottersby", country: "US" },
  });
  const other = await aJob({ contact: { name: "Tansy Marl", phone: "+12025550156" }, offer: 1 });
  return { mine: await onBench(mine, "worn-through-note"), other: await onBench(other, "another note") };
}
export type BenchJob = Awaited<ReturnType<typeof onBench>>;

async function onBench({ number, token }: { readonly number: string; readonly token: string }, why: string) {
  const shop = env.SHOP.getByName("main");
  await receiveAndStart(shop, number);
  const photo = `photo-of-${number}`;
  const wish = { number, id: photo, key: `key-of-photo-${number}` };
  await shop.announcePhoto(wish);
  const bytes = Uint8Array.from(JPEG);
  await r2PhotoStore(env.PHOTOS)?.put(photo, { type: "image/jpeg", bytes });
  const kept = { ...wish, step: "inspect", part: null, type: "image/jpeg", bytes: bytes.length } as const;
  await shop.keepPhoto({ ...kept, sha256: "0".repeat(64), staff: "Manager" });
  const ask = anAskWish(number, { id: `approval-of-${number}`, why, untilDate: "2027-03-19", staff: "Manager" });
  await shop.askOwner(ask);
  const booking = (await shop.job(number))?.booking.id ?? "";
  return { number, token, photo, approval: ask.id, booking };
}

const JPEG = [0xff, 0xd8, 0xff, 0xe0, 0, 4, 0, 0, 0xff, 0xd9];

/** A browser for each caller; the owners' carry their link in their addresses, not in a cookie. */
export async function browsersOf(): Promise<
  Readonly<Record<Caller, { readonly cookie: string; readonly from: string }>>
> {
  const [bench, manager] = [(await atWork("bench")).browser, await aManager()];
  const of = (browser: { readonly cookie: string }, last: number) => ({
    cookie: browser.cookie,
    from: `203.0.113.${last}`,
  });
  return {
    stranger: of(aBrowser(), 1),
    "owner of another job": of(aBrowser(), 2),
    owner: of(aBrowser(), 3),
    bench: of(bench, 4),
    manager: of(manager, 5),
  };
}
