import { SENDING } from "#shared/messages/photo-sending-words.ts";
import { element } from "#src/in-browser/element.ts";
import { sendPhoto } from "#src/in-browser/photo-send.ts";
import { shrink } from "#src/in-browser/photo-shrink.ts";
import { allWaiting, dropWaiting, keepWaiting, type WaitingPhoto } from "#src/in-browser/photo-store.ts";
import { say } from "#src/in-browser/say.ts";

const TRY_AGAIN_MS = 20_000;

/** Photos that this browser could not keep: they live as long as the page. */
const inHand: WaitingPhoto[] = [];
let sending = false;

/** Sends each photo the moment it is taken, wherever on the page its field stands, and what still waits from before. */
export function bringPhotos(): void {
  document.documentElement.classList.add("has-script");
  // Heard before the form around the field hears it: a photo is no answer of that form.
  document.addEventListener("change", (event) => onPicked(event), true);
  document.addEventListener("input", (event) => void fieldOf(event)?.stop(), true);
  document.addEventListener("submit", (event) => onSubmit(event), true);
  addEventListener("online", () => void sendWaiting());
  setInterval(() => void sendWaiting(), TRY_AGAIN_MS);
  void sendWaiting();
}

function fieldOf(event: Event) {
  const { target } = event;
  if (!(target instanceof HTMLInputElement)) return null;
  const { photoOf: of, photoTo: to } = target.dataset;
  if (of === undefined || to === undefined) return null;
  return { input: target, of, to, stop: () => event.stopPropagation() };
}

function onPicked(event: Event): void {
  const field = fieldOf(event);
  const file = field?.input.files?.[0];
  if (field === null || file === undefined) return;
  field.stop();
  void take(file, field);
  // So that the same photo can be taken again.
  field.input.value = "";
}

/** The page of photos has a form of its own. */
function onSubmit(event: SubmitEvent): void {
  const form = event.target;
  if (!(form instanceof HTMLFormElement) || form.dataset["photoForm"] === undefined) return;
  const { photo, of, key } = Object.fromEntries(new FormData(form));
  if (!(photo instanceof File) || photo.size === 0) return;
  event.preventDefault();
  void take(photo, { to: new URL(form.action).pathname, of: String(of), key: String(key) });
}

type Taken = { readonly of: string; readonly to: string; readonly key?: string };

async function take(file: File, { of, to, key = newKey() }: Taken): Promise<void> {
  tell(to, of, SENDING.shrinking);
  const photo = { key, to, of, photo: await shrink(file) };
  await keepWaiting(photo).catch(() => inHand.push(photo));
  await sendWaiting();
}

/** One after another; what cannot be sent now waits for the network, or for the next try. */
async function sendWaiting(): Promise<void> {
  if (sending) return;
  sending = true;
  try {
    for (let next = await nextWaiting([]), tried: string[] = []; next !== undefined; next = await nextWaiting(tried)) {
      tried = [...tried, next.key];
      await send(next);
    }
  } finally {
    sending = false;
  }
}

const waiting = async (): Promise<readonly WaitingPhoto[]> => [...(await allWaiting()), ...inHand];

const nextWaiting = async (tried: readonly string[]): Promise<WaitingPhoto | undefined> =>
  (await waiting()).find(({ key }) => !tried.includes(key));

async function send(photo: WaitingPhoto): Promise<void> {
  const { to, of } = photo;
  const sent = await sendPhoto(photo, (percent) => tell(to, of, SENDING.progress(percent)));
  switch (sent.kind) {
    case "kept":
      await forget(photo);
      show(photo, sent.src, sent.alt);
      return tell(to, of, SENDING.sent);
    case "refused":
      await forget(photo);
      return tell(to, of, sent.detail);
    case "sign-in":
      return tell(to, of, SENDING.signIn);
    case "later":
      if (inHand.includes(photo)) return tell(to, of, SENDING.notKept);
      return tell(to, of, navigator.onLine ? SENDING.failed : SENDING.waiting((await waiting()).length));
  }
}

async function forget(photo: WaitingPhoto): Promise<void> {
  if (inHand.includes(photo)) inHand.splice(inHand.indexOf(photo), 1);
  else await dropWaiting(photo.key);
}

function show({ to, of }: WaitingPhoto, src: string, alt: string): void {
  const list = boxOf(to, of)?.querySelector("[data-photo-list]");
  if (document.querySelector(`form[data-photo-form][action="${to}"]`) !== null) location.assign(`${to}?done=added`);
  if (list === null || list === undefined) return;
  const picture = element("img");
  Object.assign(picture, { src, alt, width: 144, height: 108 });
  const link = element("a", picture);
  link.href = src;
  list.append(element("li", link));
}

/** Beside the field where it is on this page, else where any page speaks. */
function tell(to: string, of: string, says: string): void {
  const said = (boxOf(to, of) ?? document.querySelector(`form[data-photo-form][action="${to}"]`))?.querySelector(
    "[data-photo-said]",
  );
  if (said === null || said === undefined) say(says);
  else said.textContent = says;
}

const boxOf = (to: string, of: string): Element | null =>
  document.querySelector(`input[data-photo-to="${to}"][data-photo-of="${of}"]`)?.closest(".photos") ?? null;

/** 128 random bits; a page on the shop's own network may have no better maker of them. */
const newKey = (): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, "0")).join("");
