import type { WaitingPhoto } from "#src/in-browser/photo-store.ts";

export type Sent =
  | { readonly kind: "kept"; readonly src: string; readonly alt: string }
  | { readonly kind: "refused"; readonly detail: string }
  | { readonly kind: "sign-in" }
  /** No network, or a server that cannot now. */
  | { readonly kind: "later" };

/** Sends one photo. Its progress is told by an older interface: `fetch` tells none of what goes up. */
export function sendPhoto({ key, to, of, photo }: WaitingPhoto, onProgress: (percent: number) => void): Promise<Sent> {
  const form = new FormData();
  form.set("key", key);
  form.set("of", of);
  form.set("photo", photo, "photo");
  return new Promise((resolve) => {
    const request = new XMLHttpRequest();
    request.upload.onprogress = ({ loaded, total }) => onProgress(Math.round((loaded / Math.max(1, total)) * 100));
    request.onload = () => resolve(sentIn(request));
    request.onerror = () => resolve({ kind: "later" });
    request.open("POST", to);
    request.setRequestHeader("accept", "application/json");
    request.send(form);
  });
}

function sentIn({ status, responseText }: XMLHttpRequest): Sent {
  if (status === 401) return { kind: "sign-in" };
  if (status === 429 || status >= 500) return { kind: "later" };
  const said = readJson(responseText);
  const { src, alt, detail } = said;
  if (status === 201 && src !== undefined) return { kind: "kept", src, alt: alt ?? "" };
  return { kind: "refused", detail: detail ?? String(status) };
}

function readJson(text: string): Readonly<Partial<Record<"src" | "alt" | "detail", string>>> {
  try {
    return JSON.parse(text) as Partial<Record<"src" | "alt" | "detail", string>>;
  } catch {
    return {};
  }
}
