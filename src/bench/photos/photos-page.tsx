import { PHOTO_SCRIPT } from "#build/assets.ts";
import { PHOTO_TYPES, type Photo, type PhotoPlace } from "#shared/job/photo.ts";
import { INSPECTED_PARTS, SHEET_STEPS } from "#shared/job/sheet-entry.ts";
import { PHOTO_PAGE, photoPlaceText } from "#shared/messages/photo-words.ts";
import { timeText } from "#shared/messages/time-words.ts";
import type { Job } from "#shared/shop/booking.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { LabelledField } from "#src/bench/labelled-field.tsx";
import { placeKey } from "#src/bench/photos/photo-field.tsx";
import { PhotoList, photoPath, photosPath } from "#src/bench/photos/photo-list.tsx";
import { ShopPage } from "#src/bench/shop-page.tsx";

type PhotosPageProps = {
  readonly front: ShopSettings["front"];
  readonly job: Job;
  readonly photos: readonly Photo[];
  /** False where the server has no place for photos. */
  readonly on: boolean;
  /** Names this form, so that it counts once however often it is sent. */
  readonly wish: string;
  /** What the next photo is of, as far as it was said. */
  readonly of: string;
  readonly problem?: string | undefined;
  readonly notice?: string | undefined;
};

/** Every place that a photo can be of: the steps, and the parts of the inspection. */
const PLACES: readonly PhotoPlace[] = SHEET_STEPS.flatMap((step): readonly PhotoPlace[] => [
  { step, part: null },
  ...(step === "inspect" ? INSPECTED_PARTS : []).map((part) => ({ step, part })),
]);

/** All photos of a job, with a form to add one that needs no script. */
export function PhotosPage({ front, job, photos, on, wish, of, problem, notice }: PhotosPageProps) {
  const { number } = job;
  const { zone } = job.booking.time;
  const { locale } = front;
  return (
    <ShopPage title={PHOTO_PAGE.title(number)} front={front} script={PHOTO_SCRIPT}>
      {notice && (
        <p class="notice" role="status">
          {notice}
        </p>
      )}
      <p>
        <a href={`/shop/jobs/${number}`}>{PHOTO_PAGE.back(number)}</a>
      </p>
      {photos.length === 0 && <p>{PHOTO_PAGE.none}</p>}
      <PhotoList
        number={number}
        photos={photos}
        zone={zone}
        locale={locale}
        below={(photo) => (
          <>
            <p class="faint">
              {PHOTO_PAGE.taken(photoPlaceText(photo), photo.staff, timeText(photo.at, zone, locale))}
            </p>
            <form class="screen" method="post" action={`${photoPath(number, photo.id)}/remove`}>
              <button class="quiet" type="submit" aria-label={PHOTO_PAGE.removeLabel(photoPlaceText(photo))}>
                {PHOTO_PAGE.remove}
              </button>
            </form>
          </>
        )}
      />
      {photos.length > 0 && <p class="faint screen">{PHOTO_PAGE.removeHint}</p>}
      <p class="faint screen">{PHOTO_PAGE.owner}</p>
      {on ? <AddForm number={number} wish={wish} of={of} problem={problem} /> : <p class="notice">{PHOTO_PAGE.off}</p>}
    </ShopPage>
  );
}

type AddFormProps = {
  readonly number: string;
  readonly wish: string;
  readonly of: string;
  readonly problem: string | undefined;
};

const AddForm = ({ number, wish, of, problem }: AddFormProps) => (
  <section class="screen" id="add" aria-labelledby="add-title">
    <h2 id="add-title">{PHOTO_PAGE.add}</h2>
    <form method="post" action={photosPath(number)} enctype="multipart/form-data" data-photo-form>
      <input type="hidden" name="key" value={wish} />
      <LabelledField
        name="of"
        label={PHOTO_PAGE.of}
        control={(links) => (
          <select {...links}>
            {PLACES.map((place) => (
              <option value={placeKey(place)} selected={placeKey(place) === of}>
                {photoPlaceText(place)}
              </option>
            ))}
          </select>
        )}
      />
      <LabelledField
        name="photo"
        label={PHOTO_PAGE.take}
        hint={PHOTO_PAGE.accepts}
        problem={problem}
        control={(links) => <input type="file" accept={PHOTO_TYPES.join()} capture="environment" {...links} />}
      />
      <p role="status" class="faint" data-photo-said></p>
      <p class="actions">
        <button type="submit">{PHOTO_PAGE.send}</button>
      </p>
    </form>
  </section>
);
