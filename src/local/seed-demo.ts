import { existsSync, writeFileSync } from "node:fs";
import * as z from "zod";
import { type DemoOwner, demoOwners } from "#src/local/demo-owners.ts";

const DAY_MS = 86_400_000;

const Offers = z.object({ offers: z.array(z.object({ id: z.string() })).min(1) });
const Hold = z.object({ hold: z.string() });
const Booking = z.object({ jobNumber: z.string() });

/** Books the demo owners through the public interface, once for a state folder; a second run finds its own bookings. */
export async function seedDemo(origin: string, folder: string): Promise<void> {
  const marker = `${folder}/demo-seeded`;
  if (existsSync(marker)) return;
  const owners = demoOwners((days) => new Date(Date.now() - days * DAY_MS).toISOString().slice(0, 10));
  try {
    for (const [index, owner] of owners.entries()) await book(origin, owner, `demo-${index + 1}`);
  } catch (error) {
    console.error(`The demo owners are not booked: ${error instanceof Error ? error.message : String(error)}`);
    return;
  }
  writeFileSync(marker, "");
}

async function book(origin: string, owner: DemoOwner, key: string): Promise<void> {
  const { verdict, answers, contact, returnTo } = owner;
  const { offers } = Offers.parse(await ask(`${origin}/api/slots?verdict=${verdict}`));
  const slot = offers[0]?.id;
  const { hold } = Hold.parse(await ask(`${origin}/api/holds`, { slot, verdict, answers }, `${key}-hold`));
  Booking.parse(await ask(`${origin}/api/bookings`, { hold, answers, contact, returnTo }, key));
}

/** The Idempotency-Key is a quoted string: a structured field, RFC 8941 section 3.3.3. */
async function ask(url: string, body?: object, key?: string): Promise<unknown> {
  const response = await fetch(url, {
    ...(body && { method: "POST", body: JSON.stringify(body) }),
    headers: { "content-type": "application/json", ...(key && { "idempotency-key": `"${key}"` }) },
  });
  if (response.ok) return response.json();
  throw new Error(`${new URL(url).pathname} answered ${response.status}. ${(await response.text()).slice(0, 500)}`);
}
