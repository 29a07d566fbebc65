import { existsSync, writeFileSync } from "node:fs";
import * as z from "zod";
import { beginDemoDay } from "#src/local/demo-bench.ts";
import { type DemoOwner, demoOwners } from "#src/local/demo-owners.ts";

const DAY_MS = 86_400_000;
/** The published board may be a minute old: a slot that went meanwhile is answered with fresh ones. */
const MOST_TRIES = 3;

const Offers = z.object({ offers: z.array(z.object({ id: z.string() })) });
const Hold = z.object({ hold: z.string() });

const Booking = z.object({ jobNumber: z.string() });

/** Books the demo owners through the public interface and begins a day at the shop, once for a state folder. */
export async function seedDemo(origin: string, folder: string, linkKey: string): Promise<void> {
  const marker = `${folder}/demo-seeded`;
  if (existsSync(marker)) return;
  const owners = demoOwners((days) => new Date(Date.now() - days * DAY_MS).toISOString().slice(0, 10));
  try {
    const numbers: string[] = [];
    for (const [index, owner] of owners.entries()) {
      const number = await book(origin, owner, `demo-${index + 1}`);
      if (number !== null) numbers.push(number);
    }
    // Where a start was cut short some are booked already, and the day has begun or goes without a beginning.
    if (numbers.length === owners.length) await beginDemoDay(origin, linkKey, numbers);
    writeFileSync(marker, "");
  } catch (error) {
    console.error(`The demo shop is not as it should be: ${error instanceof Error ? error.message : String(error)}`);
  }
}

/** Once: a start that was cut short has used the key of an owner who is booked already, and null is the answer. */
async function book(origin: string, owner: DemoOwner, key: string): Promise<string | null> {
  const { answers, contact, returnTo } = owner;
  const hold = await holdTime(origin, owner, key);
  if (hold === "held before") return null;
  const answer = await ask(`${origin}/api/bookings`, { hold, answers, contact, returnTo }, key);
  if (answer.status !== 201) throw answer.failure();
  return Booking.parse(answer.body).jobNumber;
}

async function holdTime(origin: string, { verdict, answers }: DemoOwner, key: string): Promise<string | "held before"> {
  let answer = await ask(`${origin}/api/slots?verdict=${verdict}`);
  for (let tries = 0; tries < MOST_TRIES && (answer.status === 200 || answer.status === 409); tries += 1) {
    const slot = Offers.parse(answer.body).offers[0]?.id;
    if (slot === undefined) break;
    answer = await ask(`${origin}/api/holds`, { slot, verdict, answers }, key);
    if (answer.reason === "key-reused") return "held before";
    if (answer.status === 201) return Hold.parse(answer.body).hold;
  }
  throw answer.failure();
}

type Answer = {
  readonly status: number;
  readonly body: unknown;
  /** Why it was refused, as problem details (RFC 9457) say it. */
  readonly reason: string | undefined;
  readonly failure: () => Error;
};

const Problem = z.object({ reason: z.string().optional(), detail: z.string().optional() }).catch({});

/** The Idempotency-Key is a quoted string: a structured field, RFC 9651 section 3.3.3. */
async function ask(url: string, body?: object, key?: string): Promise<Answer> {
  const response = await fetch(url, {
    ...(body && { method: "POST", body: JSON.stringify(body) }),
    headers: { "content-type": "application/json", ...(key && { "idempotency-key": `"${key}"` }) },
  });
  const parsed: unknown = await response.json().catch(() => null);
  const { reason, detail } = Problem.parse(parsed);
  const failure = () => new Error(`${new URL(url).pathname} answered ${response.status} ${detail ?? ""}`.trim());
  return { status: response.status, body: parsed, reason, failure };
}
