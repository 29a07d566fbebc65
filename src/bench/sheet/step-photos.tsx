import type { PhotoPlace } from "#shared/job/photo.ts";
import { PhotoField } from "#src/bench/photos/photo-field.tsx";
import type { SheetModel } from "#src/bench/sheet/sheet-model.ts";

/** Photos of a step, or of one part at it, with a way to add one while the unit is open. */
export function StepPhotos({ model, step, part }: PhotoPlace & { readonly model: SheetModel }) {
  const { job, front, photos } = model;
  if (photos === null) return null;
  const { zone } = job.booking.time;
  return <PhotoField number={job.number} place={{ step, part }} photos={photos} zone={zone} locale={front.locale} />;
}
