import { dropSheets } from "#src/in-browser/drop-sheets.ts";
import { forms, jobNumber } from "#src/in-browser/sheet-place.ts";
import { kept } from "#src/in-browser/sheet-store.ts";

/** Lets the open sheet be opened again while the network is away. Others are dropped, but where entries wait to be sent. */
export async function keepOffline(): Promise<void> {
  if (!("serviceWorker" in navigator)) return;
  const page = `/shop/jobs/${jobNumber()}/sheet`;
  const isOpen = forms().length > 0 && location.pathname === page;
  await dropSheets((path) => (path === page ? !isOpen : kept(path.split("/")[3] ?? "").length === 0));
  if (isOpen) await navigator.serviceWorker.register(`${page}/offline.js`, { scope: page });
}
