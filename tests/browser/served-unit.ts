import type { APIRequestContext, APIResponse } from "playwright-core";
import type { Answers } from "#shared/craft/vocabulary.ts";
import { INSPECTED_PARTS, type SheetStepId } from "#shared/job/sheet-entry.ts";
import { stepsFor } from "#shared/job/sheet-steps.ts";
import type { RunningShop } from "#tests/support/running-shop.ts";

type Form = Readonly<Record<string, string | readonly string[]>>;
type Served = {
  readonly shop: RunningShop;
  /** Signed in as the shop. */
  readonly request: APIRequestContext;
  readonly serial: string;
  readonly answers: Answers;
  readonly found: readonly number[];
  readonly left: readonly number[];
  /** Forms of steps that are not as dull as the others. */
  readonly steps?: Readonly<Partial<Record<SheetStepId, Form>>>;
};

/** A unit from booking to the parcel back, by the same forms that the pages send. */
export async function serveUnit(served: Served) {
  const { shop, request, answers, serial } = served;
  const booked = await book(shop, request, { answers, serial });
  const at = `${shop.origin}/shop/jobs/${booked.number}`;
  const moveOn = (move: string, ifState: string) => send(request, shop, `${at}/state`, { move, ifState });
  await moveOn("receive", "booked");
  await moveOn("start", "received");
  const forms = { ...dullForms(served), ...served.steps };
  for (const { id: step } of stepsFor({ work: "full-rebuild", unitFamily: answers.unitFamily })) {
    const stamp = { after: "0", key: `${booked.number}-${step}-0123456789` };
    await send(request, shop, `${at}/sheet/${step}`, { ...stamp, ...forms[step] });
  }
  await moveOn("finish", "on-bench");
  await moveOn("ship", "set");
  return booked;
}

const DIGITAL = { "tool.kind": "electronic", "tool.accuracyPercent": "1", "tool.resolution": "0.05" };

function dullForms({ found, left }: Served): Readonly<Record<SheetStepId, Form>> {
  const readings = (all: readonly number[]) => ({ readings: all.map(String), ...DIGITAL });
  return {
    "as-found-slip": { ...readings(found), breakaway: String(Math.max(...found) + 1.5) },
    inspect: Object.fromEntries(INSPECTED_PARTS.map((part) => [`parts.${part}.condition`, "good"])),
    "needles-out": { needles: "40" },
    "needles-in": { needles: "40" },
    "spring-washers": {},
    "plate-recess": {},
    screws: {},
    impeller: {},
    shims: { "tries.shimMm": "1.2", "tries.slip": String(left[0]), ...DIGITAL },
    "slip-before-lock": {
      "tries.nutDegrees": "300",
      "tries.slip": String(Math.min(...left) - 1.5),
      ...DIGITAL,
    },
    "lock-nut": {},
    "final-slip": readings(left),
    "turn-by-hand": { note: "No rub" },
  };
}

async function book(shop: RunningShop, request: APIRequestContext, wish: { answers: Answers; serial: string }) {
  const { answers, serial } = wish;
  const api = (path: string, data: unknown) =>
    request.post(`${shop.origin}/api/${path}`, {
      data: data as object,
      headers: { "idempotency-key": crypto.randomUUID(), origin: shop.origin },
    });
  const offers = await json<{ offers: { id: string }[] }>(
    await request.get(`${shop.origin}/api/slots?verdict=full-rebuild`),
  );
  const slot = offers.offers[0]?.id;
  const { hold } = await json<{ hold: string }>(await api("holds", { slot, verdict: "full-rebuild", answers }));
  const { jobNumber, ownerToken } = await json<{ jobNumber: string; ownerToken: string }>(
    await api("bookings", {
      hold,
      answers,
      serial,
      contact: { name: "Ada Quill", phone: "+12025550143" },
      returnTo: { collect: true },
    }),
  );
  return { number: jobNumber, token: ownerToken };
}

async function send(request: APIRequestContext, { origin }: RunningShop, url: string, form: Form): Promise<void> {
  const body = new URLSearchParams();
  for (const [name, values] of Object.entries(form)) for (const value of [values].flat()) body.append(name, value);
  const headers = { origin, "content-type": "application/x-www-form-urlencoded" };
  const answer = await request.post(url, { data: body.toString(), headers });
  if (!answer.ok()) throw new Error(`${url} ${body.toString()}: ${answer.status()} ${problemOn(await answer.text())}`);
}

const problemOn = (page: string): string =>
  /role="alert"[\s\S]*?<\/(?:p|section)>/.exec(page)?.[0] ?? page.slice(0, 200);

async function json<Body>(answer: APIResponse): Promise<Body> {
  if (!answer.ok()) throw new Error(`${answer.url()}: ${answer.status()} ${await answer.text()}`);
  return (await answer.json()) as Body;
}
