/**
 * Keeps one job's open sheet readable while the network is away: its page, and the style sheets and scripts that the
 * page names. It is registered for that page alone, and ends itself as soon as the shop no longer shows the page as one
 * that may be written.
 */
type Told = { readonly waitUntil: (work: Promise<unknown>) => void };
type FetchTold = Told & { readonly request: Request; readonly respondWith: (answer: Promise<Response>) => void };
type WorkerScope = {
  readonly registration: { readonly scope: string; readonly unregister: () => Promise<boolean> };
  readonly clients: { readonly claim: () => Promise<void> };
  readonly skipWaiting: () => Promise<void>;
  readonly addEventListener: ((type: "install" | "activate", hook: (event: Told) => void) => void) &
    ((type: "fetch", hook: (event: FetchTold) => void) => void);
};
const worker = globalThis as unknown as WorkerScope;

const sheet = new URL(worker.registration.scope).pathname;
/** Read by the page's script too, which drops it. */
const kept = () => caches.open(`sheet ${sheet}`);
/** A sheet that nobody opened for so long is not shown without the network any more; default of this project. */
const LONGEST_MS = 3 * 86_400_000;
const MAY_BE_WRITTEN = "data-sheet-form";

worker.addEventListener("install", (event) => {
  event.waitUntil(Promise.all([fromNetwork(sheet), worker.skipWaiting()]));
});
worker.addEventListener("activate", (event) => event.waitUntil(worker.clients.claim()));
worker.addEventListener("fetch", (event) => {
  const { method, url } = event.request;
  const { pathname } = new URL(url);
  if (method !== "GET") return;
  if (pathname === sheet) event.respondWith(fromNetwork(url).catch(() => fromCache(sheet)));
  else if (pathname.startsWith("/assets/")) event.respondWith(fromCache(pathname).catch(() => fetch(event.request)));
});

/** The page as it is now; what it is made of is kept in place of what was. */
async function fromNetwork(url: string): Promise<Response> {
  const answer = await fetch(url, { credentials: "same-origin", cache: "no-store" });
  const copy = answer.clone();
  const text = await copy.text();
  if (answer.ok && text.includes(MAY_BE_WRITTEN)) await keepPage(answer, text);
  else if (answer.status < 500) await Promise.all([caches.delete(`sheet ${sheet}`), worker.registration.unregister()]);
  return answer;
}

async function keepPage(answer: Response, text: string): Promise<void> {
  const cache = await kept();
  const assets = [...new Set(text.match(/\/assets\/[\w.-]+/g) ?? [])];
  for (const { url } of await cache.keys()) {
    const { pathname } = new URL(url);
    if (pathname !== sheet && !assets.includes(pathname)) await cache.delete(url);
  }
  for (const asset of assets) if ((await cache.match(asset)) === undefined) await cache.add(asset);
  // As the site sends it: a page from the cache is no freer than one from the network.
  const headers = new Headers(answer.headers);
  for (const name of ["content-encoding", "content-length"]) headers.delete(name);
  headers.set("x-kept-at", String(Date.now()));
  await cache.put(sheet, new Response(text, { headers }));
}

async function fromCache(path: string): Promise<Response> {
  const found = await (await kept()).match(path);
  const keptAt = Number(found?.headers.get("x-kept-at") ?? Date.now());
  if (found === undefined || Date.now() - keptAt > LONGEST_MS) throw new Error("Not kept on this device");
  return found;
}
