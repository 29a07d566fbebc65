import { INSPECTED_PARTS, type InspectedPart, SHEET_STEPS, type SheetStepId } from "#shared/job/sheet-entry.ts";

/** What the bench may send; every camera and browser makes one of them. No library here: the browser reads this file too. */
export const PHOTO_TYPES = ["image/jpeg", "image/png", "image/webp"] as const;
export type PhotoType = (typeof PHOTO_TYPES)[number];

/** What a phone's camera makes, sent as it is where no script shrinks it. Default of this project. */
export const MOST_PHOTO_BYTES = 15 * 1024 * 1024;
/** Long side of a photo after it was shrunk, in pixels: teeth and cracks still show. Default of this project. */
export const LONG_SIDE_PX = 1600;
/** Of one job, removed ones not counted. Default of this project. */
export const MOST_PHOTOS = 60;

/** A photo of a job, taken at a step of its sheet and, while inspecting, of one part. */
export type Photo = {
  readonly id: string;
  readonly step: SheetStepId;
  readonly part: InspectedPart | null;
  readonly type: PhotoType;
  readonly bytes: number;
  readonly sha256: string;
  readonly at: number;
  readonly staff: string;
};

/** Where a photo was taken. */
export type PhotoPlace = { readonly step: SheetStepId; readonly part: InspectedPart | null };

/** The place that a form names, or null where it names none that there is. @example readPhotoPlace("inspect", "shaft")?.part // "shaft" */
export function readPhotoPlace(step: string | undefined, part: string | undefined): PhotoPlace | null {
  const knownStep = SHEET_STEPS.find((known) => known === step);
  const knownPart = INSPECTED_PARTS.find((known) => known === part) ?? null;
  if (knownStep === undefined || (knownPart === null && part !== undefined && part !== "")) return null;
  return { step: knownStep, part: knownPart };
}
