import { signInLink } from "#src/local/sign-in-link.ts";

/** The demo's units that have come already, by the place of their owners in the list. */
const ON_THE_BENCH = 1;
const RECEIVED = 2;

/**
 * Lets a day at the demo shop have begun: one unit is on a bench, one was received, the others are on their way. It goes
 * through the shop's own pages, as somebody at work would.
 * @param numbers the demo owners' jobs, in order
 */
export async function beginDemoDay(origin: string, linkKey: string, numbers: readonly string[]): Promise<void> {
  const [started = "", received = ""] = [numbers[ON_THE_BENCH], numbers[RECEIVED]];
  const opened = await post(await signInLink(origin, linkKey), {});
  const cookie = opened.headers.get("set-cookie")?.split(";")[0] ?? "";
  const at = (path: string, form: Form) => post(`${origin}/shop${path}`, form, cookie);
  await at(`/receive/${started}`, { note: "Box dented on one side, unit dry and whole." });
  const offer = await soonestTime(`${origin}/shop/jobs/${started}/move`, cookie);
  if (offer !== undefined) await at(`/jobs/${started}/move`, { offer });
  await at(`/jobs/${started}/state`, { move: "start", ifState: "received" });
  await at(`/receive/${received}`, { note: "" });
  await at("/sign-out", {});
}

type Form = Readonly<Record<string, string>>;

async function soonestTime(page: string, cookie: string): Promise<string | undefined> {
  const text = await (await fetch(page, { headers: { cookie } })).text();
  return /name="offer" value="([^"]+)"/.exec(text)?.[1];
}

async function post(url: string, form: Form, cookie = ""): Promise<Response> {
  const headers = { origin: new URL(url).origin, cookie };
  const answer = await fetch(url, { method: "POST", body: new URLSearchParams(form), headers, redirect: "manual" });
  if (answer.status !== 303) throw new Error(`A page of the demo shop answered ${answer.status}`);
  return answer;
}
