import { PASSKEY_TROUBLE } from "#shared/messages/passkey-words.ts";
import { dropSheets } from "#src/in-browser/drop-sheets.ts";
import { answerText, creationOptions, type OptionsJson, requestOptions } from "#src/in-browser/passkey-json.ts";

/** Whoever is to sign in is not signed in: no sheet stays to be looked at. */
if (document.querySelector('form[data-passkey="sign-in"]') !== null) void dropSheets();

/** A form waits for a passkey's answer, and is then sent as any other form. */
for (const form of document.querySelectorAll<HTMLFormElement>("form[data-passkey]")) {
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    void answerWith(form);
  });
}

async function answerWith(form: HTMLFormElement): Promise<void> {
  const button = form.querySelector("button");
  const field = form.elements.namedItem("response");
  if (button === null || button.disabled || !(field instanceof HTMLInputElement)) return;
  button.disabled = true;
  tell(form, "");
  try {
    field.value = await passkeyAnswer(form);
    form.submit();
  } catch (error) {
    tell(form, troubleOf(error));
    button.disabled = false;
  }
}

/** What went wrong, in words to be shown as they are. */
class Trouble extends Error {}

async function passkeyAnswer(form: HTMLFormElement): Promise<string> {
  if (!window.isSecureContext) throw new Trouble(PASSKEY_TROUBLE.insecure);
  if (typeof PublicKeyCredential !== "function") throw new Trouble(PASSKEY_TROUBLE.unsupported);
  const options = await askOptions(form);
  const credential =
    form.dataset["passkey"] === "add"
      ? await navigator.credentials.create({ publicKey: creationOptions(options) })
      : await navigator.credentials.get({ publicKey: requestOptions(options) });
  if (!(credential instanceof PublicKeyCredential)) throw new Trouble(PASSKEY_TROUBLE.stopped);
  return answerText(credential);
}

/** The form's other fields go along: a name that is missing is told before anybody touches a sensor. */
async function askOptions(form: HTMLFormElement): Promise<OptionsJson> {
  const fields = [...new FormData(form)].filter((field): field is [string, string] => typeof field[1] === "string");
  const answer = await fetch(form.dataset["options"] ?? "", {
    method: "POST",
    body: new URLSearchParams(fields),
  }).catch(() => null);
  if (answer === null) throw new Trouble(PASSKEY_TROUBLE.offline);
  const body: unknown = await answer.json().catch(() => null);
  if (answer.ok) return body as OptionsJson;
  throw new Trouble(detailIn(body) ?? PASSKEY_TROUBLE.stopped);
}

const detailIn = (body: unknown): string | null =>
  typeof body === "object" && body !== null && "detail" in body && typeof body.detail === "string" ? body.detail : null;

/** The browser's errors by name, as Web Authentication Level 3 has them (5.1.3 and 5.1.4). */
function troubleOf(error: unknown): string {
  if (error instanceof Trouble) return error.message;
  const name = error instanceof DOMException ? error.name : "";
  if (name === "InvalidStateError") return PASSKEY_TROUBLE.known;
  if (name === "SecurityError") return PASSKEY_TROUBLE.insecure;
  return name === "NotAllowedError" || name === "AbortError" ? PASSKEY_TROUBLE.stopped : PASSKEY_TROUBLE.unsupported;
}

function tell(form: HTMLFormElement, text: string): void {
  const place = form.querySelector<HTMLElement>("[data-trouble]");
  if (place === null) return;
  place.hidden = text === "";
  place.textContent = text;
}
