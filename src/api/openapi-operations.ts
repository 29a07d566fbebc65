import type { STATUS_PHRASES } from "#src/http/problem.ts";

/** One operation of the interface, as the OpenAPI document says it. */
export type Operation = {
  readonly method: "get" | "post" | "patch" | "delete";
  readonly path: string;
  readonly id: string;
  readonly summary: string;
  /** Name of the body's schema. */
  readonly takes?: string;
  readonly query?: readonly string[];
  readonly gives: readonly [status: 200 | 201, schema: string];
  readonly refuses: readonly (keyof typeof STATUS_PHRASES)[];
  /** A key that names the wish, or the owner's token. */
  readonly needs?: "idempotency-key" | "owner-token";
};

const BAD_BODY = [400, 413, 415, 422] as const;

export const OPERATIONS: readonly Operation[] = [
  {
    method: "post",
    path: "/api/triage",
    id: "triage",
    summary: "Judge an owner's answers as on a date: what the unit needs, and why. Nothing is stored.",
    takes: "TriageRequest",
    gives: [200, "TriageAnswer"],
    refuses: BAD_BODY,
  },
  {
    method: "post",
    path: "/api/slip-plan",
    id: "planSlip",
    summary: "The slip to set on a craft. Nothing is stored.",
    takes: "SlipPlanRequest",
    gives: [200, "SlipPlanAnswer"],
    refuses: BAD_BODY,
  },
  {
    method: "post",
    path: "/api/slip-reading",
    id: "readSlip",
    summary: "Decide on readings of the final slip: accept, reject or not proved. Nothing is stored.",
    takes: "SlipReadingRequest",
    gives: [200, "SlipReadingAnswer"],
    refuses: BAD_BODY,
  },
  {
    method: "get",
    path: "/api/slots",
    id: "offerSlots",
    summary: "Up to three offers of bench time for a verdict.",
    query: ["verdict", "from"],
    gives: [200, "SlotsAnswer"],
    refuses: [422],
  },
  {
    method: "post",
    path: "/api/holds",
    id: "hold",
    summary: "Hold bench time for some minutes. 409 carries fresh offers.",
    takes: "HoldRequest",
    gives: [201, "HoldAnswer"],
    refuses: [...BAD_BODY, 409],
    needs: "idempotency-key",
  },
  {
    method: "post",
    path: "/api/bookings",
    id: "book",
    summary: "Book the bench time of a hold. The answers are judged again; 409 carries fresh offers, or the new price.",
    takes: "BookingRequest",
    gives: [201, "BookingAnswer"],
    refuses: [...BAD_BODY, 409],
    needs: "idempotency-key",
  },
  {
    method: "get",
    path: "/api/bookings/{id}",
    id: "receipt",
    summary: "The receipt of a booking, which says nothing about a person. It may be a minute old.",
    gives: [200, "ReceiptAnswer"],
    refuses: [404],
  },
  {
    method: "patch",
    path: "/api/bookings/{id}",
    id: "move",
    summary:
      "Move a booking to another offer. A booking that is there already stays as it is. 409 carries fresh offers.",
    takes: "MoveRequest",
    gives: [200, "ChangeAnswer"],
    refuses: [...BAD_BODY, 401, 404, 409],
    needs: "owner-token",
  },
  {
    method: "delete",
    path: "/api/bookings/{id}",
    id: "cancel",
    summary: "Cancel a booking. One that is cancelled already gets the same answer again.",
    gives: [200, "ChangeAnswer"],
    refuses: [401, 404, 409],
    needs: "owner-token",
  },
];
