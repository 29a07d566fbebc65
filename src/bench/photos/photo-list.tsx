import type { Child } from "hono/jsx";
import type { Photo } from "#shared/job/photo.ts";
import { PHOTO_PAGE, photoPlaceText } from "#shared/messages/photo-words.ts";
import { timeText } from "#shared/messages/time-words.ts";

type PhotoListProps = {
  readonly number: string;
  readonly photos: readonly Photo[];
  readonly zone: string;
  readonly locale: string;
  /** What stands below each. */
  readonly below?: (photo: Photo) => Child;
};

/** Photos in small, each a link to itself in full. */
export const PhotoList = ({ number, photos, zone, locale, below }: PhotoListProps) => (
  <ul class="photo-list" data-photo-list>
    {photos.map((photo) => (
      <li>
        <a href={photoPath(number, photo.id)}>
          <img
            src={photoPath(number, photo.id)}
            alt={PHOTO_PAGE.taken(photoPlaceText(photo), photo.staff, timeText(photo.at, zone, locale))}
            width="144"
            height="108"
            loading="lazy"
          />
        </a>
        {below?.(photo)}
      </li>
    ))}
  </ul>
);

export const photosPath = (number: string): string => `/shop/jobs/${number}/photos`;
export const photoPath = (number: string, id: string): string => `${photosPath(number)}/${id}`;
