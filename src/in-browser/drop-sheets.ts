/**
 * Ends what shows a bench sheet without the network. Pages only: what was written and not sent yet stays on the device,
 * whoever signs in next.
 * @param which by the page's path; all where left out
 */
export async function dropSheets(which: (path: string) => boolean = () => true): Promise<void> {
  if (!("serviceWorker" in navigator)) return;
  for (const registration of await navigator.serviceWorker.getRegistrations()) {
    if (which(new URL(registration.scope).pathname)) await registration.unregister();
  }
  for (const name of await caches.keys()) {
    const [, path] = /^sheet (.*)$/.exec(name) ?? [];
    if (path !== undefined && which(path)) await caches.delete(name);
  }
}
