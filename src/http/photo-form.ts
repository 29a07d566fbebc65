import type { Context } from "hono";
import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { type PhotoPlace, readPhotoPlace } from "#shared/job/photo.ts";
import { type CleanPhoto, cleanPhoto, type PhotoBytesRefusal } from "#src/http/photo-bytes.ts";

export type PhotoForm = { readonly place: PhotoPlace; readonly photo: CleanPhoto; readonly key: string };

/** A posted photo, cleaned, with what it is of and the key that its sender gave it. */
export async function readPhotoForm(
  c: Context,
): Promise<Outcome<PhotoForm, { readonly reason: PhotoBytesRefusal["reason"] | "no-place" }>> {
  const form = await formIn(c);
  const place = readPhotoPlace(...placeIn(form));
  if (place === null) return refuse({ reason: "no-place" });
  const file = form.get("photo");
  if (!(file instanceof File)) return refuse({ reason: "empty" });
  const photo = cleanPhoto(new Uint8Array(await file.arrayBuffer()));
  if (!photo.ok) return photo;
  const key = textIn(form, "key");
  return accept({ place, photo: photo.value, key: /^[\w-]{16,64}$/.test(key) ? key : crypto.randomUUID() });
}

/** One field names step and part together, so that one list on a page can offer them all. */
function placeIn(form: FormData): [string, string | undefined] {
  const [step = "", part] = textIn(form, "of").split("/");
  return [step, part];
}

/** The platform throws a TypeError where a body is not the form that its content type says. */
async function formIn(c: Context): Promise<FormData> {
  try {
    return await c.req.formData();
  } catch (error) {
    if (error instanceof TypeError) return new FormData();
    throw error;
  }
}

function textIn(form: FormData, name: string): string {
  const value = form.get(name);
  return typeof value === "string" ? value : "";
}

/** SHA-256 as lower-case hex. */
export async function sha256OfBytes(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const digest = await crypto.subtle.digest("SHA-256", bytes);
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, "0")).join("");
}
