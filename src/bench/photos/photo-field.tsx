import { PHOTO_TYPES, type Photo, type PhotoPlace } from "#shared/job/photo.ts";
import { PHOTO_PAGE } from "#shared/messages/photo-words.ts";
import { PhotoList, photosPath } from "#src/bench/photos/photo-list.tsx";

type PhotoFieldProps = {
  readonly number: string;
  readonly place: PhotoPlace;
  /** All photos of the job; those of the place are shown. */
  readonly photos: readonly Photo[];
  readonly zone: string;
  readonly locale: string;
};

/**
 * The photos of one step, or of one part at it, and a way to add one. It may stand inside another form: with a script a
 * photo is sent the moment it is taken, and without one the link leads to the page of photos. The page that holds it
 * loads the photos' script.
 */
export function PhotoField({ number, place, photos, zone, locale }: PhotoFieldProps) {
  const here = photos.filter(({ step, part }) => step === place.step && part === place.part);
  const of = placeKey(place);
  return (
    <div class="photos">
      <PhotoList number={number} photos={here} zone={zone} locale={locale} />
      <a class="button quiet screen unscripted" href={`${photosPath(number)}?of=${encodeURIComponent(of)}#add`}>
        {PHOTO_PAGE.add}
      </a>
      <label class="button quiet screen scripted">
        {PHOTO_PAGE.add}
        <input
          class="hidden"
          type="file"
          accept={PHOTO_TYPES.join()}
          capture="environment"
          data-photo-of={of}
          data-photo-to={photosPath(number)}
        />
      </label>
      <p role="status" class="faint screen" data-photo-said></p>
    </div>
  );
}

/** How a form names a place. @example placeKey({ step: "inspect", part: "shaft" }) // "inspect/shaft" */
export const placeKey = ({ step, part }: PhotoPlace): string => (part === null ? step : `${step}/${part}`);
