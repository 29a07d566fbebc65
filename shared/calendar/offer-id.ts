import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { type Quantum, quantum } from "#shared/calendar/quantum.ts";

/** One bench and one start, so that of all who want it only one can win it. */
export type OfferedStart = { readonly bench: string; readonly start: Quantum };

/** Six digits of base 36 reach beyond the year 60000 and stay within what a date can say. */
const OFFER_ID = /^([a-z0-9]+(?:-[a-z0-9]+)*)\.(0|[1-9a-z][0-9a-z]{0,5})$/;

/** @example offerId("b1", quantum(2_006_388)) // "b1.17050" */
export const offerId = (bench: string, start: Quantum): string => `${bench}.${start.toString(36)}`;

/** @example parseOfferId("b1.17050") // { ok: true, value: { bench: "b1", start: 2006388 } } */
export function parseOfferId(text: string): Outcome<OfferedStart, "not-an-offer-id"> {
  const [, bench, start] = OFFER_ID.exec(text) ?? [];
  if (bench === undefined || start === undefined) return refuse("not-an-offer-id");
  return accept({ bench, start: quantum(Number.parseInt(start, 36)) });
}
