import { MOST_PHOTO_BYTES, type PhotoPlace } from "#shared/job/photo.ts";
import { PART_WORDS, STEP_WORDS } from "#shared/messages/sheet-words.ts";

const MEGABYTE = 1024 * 1024;
const ACCEPTED = "Accepted: a JPEG, PNG or WebP photo";

export const PHOTO_PAGE = {
  title: (number: string) => `Photos of job ${number}`,
  heading: "Photos",
  none: "No photo yet.",
  add: "Add a photo",
  all: "All photos of this job",
  take: "Take or choose a photo",
  of: "Photo of",
  send: "Send the photo",
  remove: "Remove",
  removeLabel: (of: string) => `Remove the photo: ${of}`,
  removeHint: "A removed photo is deleted for good. The history keeps that it was there.",
  accepts: `${ACCEPTED} of at most ${MOST_PHOTO_BYTES / MEGABYTE} MB. Where and when it was taken is deleted from it.`,
  owner: "The owner sees photos of this job by the owner's link.",
  back: (number: string) => `Back to job ${number}`,
  added: "The photo is kept.",
  removed: "The photo is removed.",
  off: "Photos are switched off: this server has no place to keep them.",
  notSent: "The photo was not kept",
  taken: (of: string, staff: string, at: string) => `${of}, taken by ${staff}, ${at}`,
} as const;

/** @example photoPlaceText({ step: "inspect", part: "shaft" }) // "Inspect: Shaft" */
export const photoPlaceText = ({ step, part }: PhotoPlace): string =>
  part === null ? STEP_WORDS[step].title : `${STEP_WORDS[step].title}: ${PART_WORDS[part]}`;

/** Why a photo was not kept, and what would be. */
export const PHOTO_REFUSED = {
  empty: "Choose a photo first.",
  "too-large": `That photo is too large. ${ACCEPTED} of at most ${MOST_PHOTO_BYTES / MEGABYTE} MB.`,
  "not-a-photo": `That is not a photo of an accepted kind. ${ACCEPTED}. If the camera makes HEIC photos, set it to JPEG.`,
  damaged: `That photo did not arrive whole, or is damaged. ${ACCEPTED}, complete.`,
  "no-place": "Choose what the photo is of.",
  "not-now": "The job is over, so it takes no more photos.",
  "too-many": "The job has as many photos as it may have. Remove one first.",
  "came-too-late": "The photo took too long to arrive. Send it again.",
  "no-such-job": "No job has that number.",
  off: PHOTO_PAGE.off,
} as const;
export type PhotoRefused = keyof typeof PHOTO_REFUSED;
