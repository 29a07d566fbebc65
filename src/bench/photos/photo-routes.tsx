import { type Context, Hono } from "hono";
import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import type { Photo } from "#shared/job/photo.ts";
import { PHOTO_PAGE, PHOTO_REFUSED, type PhotoRefused, photoPlaceText } from "#shared/messages/photo-words.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import type { JobEnv } from "#src/bench/job-env.tsx";
import { photoPath, photosPath } from "#src/bench/photos/photo-list.tsx";
import { PhotosPage } from "#src/bench/photos/photos-page.tsx";
import { photoAnswer } from "#src/http/photo-answer.ts";
import { readPhotoForm, sha256OfBytes } from "#src/http/photo-form.ts";
import { problem } from "#src/http/problem.ts";

type PhotoContext = Context<JobEnv>;

/** Photos of a job: taken, shown and removed by the shop. */
export function photoRoutes(needs: BenchNeeds) {
  return new Hono<JobEnv>()
    .get("/:number/photos", async (c) => c.html(await page(c, needs, { notice: noticeIn(c.req.query("done")) })))
    .post("/:number/photos", async (c) => {
      const kept = await keep(c, needs);
      return kept.ok ? keptAnswer(c, kept.value) : refusedAnswer(c, needs, kept.refusal.reason);
    })
    .get("/:number/photos/:id", async (c) => {
      const photo = await needs.shop.photo({ number: c.var.job.number, id: c.req.param("id") });
      return photoAnswer(c, photo, needs.photoStore);
    })
    .post("/:number/photos/:id/remove", async (c) => {
      const { number } = c.var.job;
      // Removed already is as good as removed now.
      await needs.shop.removePhoto({ number, id: c.req.param("id"), staff: c.var.staff.name });
      return c.redirect(`${photosPath(number)}?done=removed`, 303);
    });
}

/** Announced, then stored, then listed: what breaks off in between leaves no bytes behind. */
async function keep(
  c: PhotoContext,
  { shop, photoStore, newId }: BenchNeeds,
): Promise<Outcome<Photo, { readonly reason: PhotoRefused }>> {
  if (photoStore === null) return refuse({ reason: "off" });
  const form = await readPhotoForm(c);
  if (!form.ok) return form;
  const { place, photo, key } = form.value;
  const wish = { number: c.var.job.number, id: newId(), key };
  const announced = await shop.announcePhoto(wish);
  if (!announced.ok) return announced;
  if (announced.value.already !== null) return accept(announced.value.already);
  await photoStore.put(wish.id, photo);
  const { type, bytes } = photo;
  const sha256 = await sha256OfBytes(bytes);
  return shop.keepPhoto({ ...wish, ...place, type, bytes: bytes.length, sha256, staff: c.var.staff.name });
}

const wantsJson = (c: Context): boolean => c.req.header("accept") === "application/json";

function keptAnswer(c: PhotoContext, photo: Photo): Response {
  const { number } = c.var.job;
  if (!wantsJson(c)) return c.redirect(`${photosPath(number)}?done=added`, 303);
  return c.json({ src: photoPath(number, photo.id), alt: photoPlaceText(photo) }, 201);
}

async function refusedAnswer(c: PhotoContext, needs: BenchNeeds, reason: PhotoRefused): Promise<Response> {
  const status = STATUS[reason];
  if (wantsJson(c)) return problem({ status, detail: PHOTO_REFUSED[reason], reason });
  return c.html(await page(c, needs, { problem: PHOTO_REFUSED[reason] }), status);
}

const STATUS = {
  empty: 422,
  "no-place": 422,
  "too-large": 413,
  "not-a-photo": 415,
  damaged: 422,
  "not-now": 409,
  "too-many": 409,
  "came-too-late": 409,
  "no-such-job": 404,
  off: 503,
} as const satisfies Record<PhotoRefused, number>;

const noticeIn = (done: string | undefined): string | undefined =>
  done === "added" || done === "removed" ? PHOTO_PAGE[done] : undefined;

async function page(c: PhotoContext, needs: BenchNeeds, said: { problem?: string; notice?: string | undefined }) {
  const { job, front } = c.var;
  return (
    <PhotosPage
      front={front}
      job={job}
      photos={await needs.shop.photos(job.number)}
      on={needs.photoStore !== null}
      wish={needs.newId()}
      of={c.req.query("of") ?? "inspect"}
      {...said}
    />
  );
}
