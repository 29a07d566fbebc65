import { LONG_SIDE_PX } from "#shared/job/photo.ts";

/** Good enough to see a hairline crack; default of this project. */
const JPEG_QUALITY = 0.85;

/**
 * The photo upright, at most {@link LONG_SIDE_PX} long, as a JPEG with nothing in it but the picture. What this browser
 * cannot read is sent as it is: the server says what is accepted.
 */
export async function shrink(photo: Blob): Promise<Blob> {
  const picture = await createImageBitmap(photo).catch(() => null);
  if (picture === null) return photo;
  const scale = Math.min(1, LONG_SIDE_PX / Math.max(picture.width, picture.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  const paper = canvas.getContext("2d");
  if (paper === null) return photo;
  // JPEG has no see-through: what is would turn black.
  paper.fillStyle = "#fff";
  paper.fillRect(0, 0, canvas.width, canvas.height);
  paper.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  return new Promise((resolve) => canvas.toBlob((made) => resolve(made ?? photo), "image/jpeg", JPEG_QUALITY));
}
