import { exports } from "cloudflare:workers";
import { vi } from "vitest";

const HERE = "http://shop.example";

export type Ask = {
  readonly method?: string;
  /** Sent as JSON, unless it is text already. */
  readonly body?: unknown;
  readonly key?: string;
  readonly token?: string;
  /** Whose caps are counted together. */
  readonly from?: string;
  readonly headers?: Readonly<Record<string, string>>;
};

/** A request to the whole worker: real object, real KV. */
export function ask(path: string, { method, body, key, token, from = "192.0.2.1", headers = {} }: Ask = {}) {
  return exports.default.fetch(`${HERE}${path}`, {
    method: method ?? (body === undefined ? "GET" : "POST"),
    headers: {
      "cf-connecting-ip": from,
      ...(body === undefined ? {} : { "content-type": "application/json" }),
      ...(key === undefined ? {} : { "idempotency-key": key }),
      ...(token === undefined ? {} : { authorization: `Bearer ${token}` }),
      ...headers,
    },
    ...(body === undefined ? {} : { body: typeof body === "string" ? body : JSON.stringify(body) }),
  });
}

/** A Monday morning at the demo shop. Worker and object run in this isolate, so both tell this time. */
export const MONDAY = Date.UTC(2027, 2, 1, 15);
export const setClock = (now: number) => vi.useFakeTimers({ toFake: ["Date"], now });

/** The first request loads the whole worker, which may take longer than a test should. */
export const WARM_UP = [async () => void (await ask("/api/slots?verdict=slip-check")), 60_000] as const;

// biome-ignore lint/suspicious/noExplicitAny: tests look at answers that are checked against their schemas elsewhere.
export type Json = any;

export async function jsonOf(answer: Response | Promise<Response>, status: number): Promise<Json> {
  const { status: got, body } = await textOf(answer);
  if (got !== status) throw new Error(`${status} was expected, but it is ${got}: ${body}`);
  return JSON.parse(body);
}

async function textOf(answer: Response | Promise<Response>) {
  const response = await answer;
  return { status: response.status, body: await response.text() };
}

/** A problem as it should be: its media type, and its status said twice. */
export async function problemOf(answer: Response | Promise<Response>, status: number): Promise<Json> {
  const response = await answer;
  const problem = await jsonOf(response, status);
  if (response.headers.get("content-type") !== "application/problem+json") throw new Error("Not problem+json");
  if (problem.status !== status || problem.type !== "about:blank") throw new Error(JSON.stringify(problem));
  return problem;
}

/** The fields that a 422 names. */
export const fieldsOf = async (answer: Response | Promise<Response>): Promise<readonly string[]> =>
  (await problemOf(answer, 422)).errors.map(({ field }: { field: string }) => field);
