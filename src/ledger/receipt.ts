import type { JobState } from "#shared/shop/booking.ts";

/** What anybody who knows a booking's id may read of it: nothing personal. A later version outdoes an earlier one. */
export type Receipt = {
  readonly booking: string;
  readonly state: JobState;
  readonly startsAt: number;
  readonly endsAt: number;
  readonly bench: string;
  readonly version: number;
};
