import { CSS } from "#build/assets.ts";
import type { BenchJob } from "#tests/http/callers.ts";

/** The status that each caller gets: stranger, owner of another job, owner, bench, manager. */
export type Expected = readonly [number, number, number, number, number];

/** A request with what it needs to mean something: where it goes, what its form holds, what it tells. */
export type Row = {
  readonly gets: Expected;
  /** The address, where another than the pattern's own filling is wanted. */
  readonly at?: (target: Target) => string;
  readonly form?: (target: Target) => Readonly<Record<string, string>>;
  /** The answer to those who may see it holds what is secret to all others. */
  readonly tells?: true;
  /** How long the answer may be kept, where it comes at all; no other may be. */
  readonly kept?: string;
};

/** `token` is the caller's own link; nobody's for who has none. `mine` is the job that it is all about. */
export type Target = { readonly token: string; readonly mine: BenchJob; readonly staff: string };

const all = (status: number): Expected => [status, status, status, status, status];
/** Behind the owner's link: an owner of another job sees that other job, never this one. */
const link = (status: number, ofOther = status): Expected => [404, ofOther, status, 404, 404];
const staff = (status: number): Expected => [401, 401, 401, status, status];
const managers = (status: number): Expected => [401, 401, 401, 403, status];

/** A shelf that every shop has. */
const LOCK_NUTS = "/shop/parts/lock-nut/set-nut";

const row = (gets: Expected, more: Omit<Row, "gets"> = {}): Row => ({ gets, ...more });
const form = (fields: Readonly<Record<string, string>>) => ({ form: () => fields });

/** Every route of the site. One that is not here fails the test. */
export const ROUTES: Readonly<Record<string, Row>> = {
  "GET /healthz": row(all(200)),
  "GET /assets/:name": row(all(200), {
    at: () => `/assets/${CSS.name}`,
    kept: "public, max-age=31536000, immutable",
  }),

  "GET /": row(all(200)),
  "GET /intake": row(all(303)),
  "GET /intake/questions": row(all(200), { kept: "private, max-age=3600" }),
  "GET /intake/:question": row(all(200), { at: () => "/intake/symptoms" }),
  "POST /intake/:question": row(all(422), { at: () => "/intake/symptoms" }),
  "POST /intake/start-over": row(all(303)),
  "GET /resume/:token": row(all(404)),
  "POST /resume/:token": row(all(303)),
  "GET /verdict": row(all(303)),
  "GET /verdict/due.ics": row(all(404)),
  "POST /verdict/hold": row(all(303)),
  "GET /confirm": row(all(303)),
  "POST /confirm": row(all(303)),
  "GET /check": row(all(200)),
  "GET /check/:code": row(all(422), { at: () => "/check/no-such-code" }),
  // What a code on a tag in the open says to anybody; whoever works here goes on to the parcel.
  "GET /job/:number": row([200, 200, 200, 303, 303]),

  "GET /tag/:token": row(link(200)),
  "GET /tag/:token/slot.ics": row(link(200)),
  "GET /tag/:token/record": row(link(200)),
  "GET /tag/:token/photos/:id": row(link(200, 404), { kept: "private, no-cache" }),
  "GET /tag/:token/approval": row(link(200), { tells: true }),
  "POST /tag/:token/approval": row(link(303, 404), {
    form: ({ mine }) => ({ approval: mine.approval, text: "How long will it take?", key: "a-key-of-this-question" }),
  }),
  "POST /tag/:token/move": row(link(409), form({ offer: "no-such-offer" })),
  "POST /tag/:token/cancel": row(link(409)),

  "GET /api/openapi.json": row(all(200), { kept: "public, max-age=300" }),
  "GET /api/slots": row(all(422)),
  "POST /api/triage": row(all(415)),
  "POST /api/slip-plan": row(all(415)),
  "POST /api/slip-reading": row(all(415)),
  "POST /api/holds": row(all(415)),
  "POST /api/bookings": row(all(415)),
  // The receipt of whoever knows the booking's id, which nobody can guess; it names no person.
  "GET /api/bookings/:id": row(all(200), { at: ({ mine }) => `/api/bookings/${mine.booking}` }),
  "PATCH /api/bookings/:id": row([401, 415, 415, 401, 401], { at: ({ mine }) => `/api/bookings/${mine.booking}` }),
  "DELETE /api/bookings/:id": row([401, 404, 409, 401, 401], { at: ({ mine }) => `/api/bookings/${mine.booking}` }),

  "GET /shop/sign-in": row(all(200)),
  "POST /shop/sign-in": row(all(422)),
  "POST /shop/sign-in/options": row(all(200)),
  "GET /shop/sign-in/:token": row(all(401)),
  "POST /shop/sign-in/:token": row(all(401)),
  "GET /shop/invite/:token": row(all(401)),
  "POST /shop/invite/:token": row(all(401)),
  "POST /shop/invite/:token/options": row(all(401)),
  "GET /shop/signed-out": row(all(200)),

  "GET /shop": row(staff(200), { tells: true }),
  "GET /shop/arrivals": row(staff(200)),
  "GET /shop/find": row(staff(422)),
  "GET /shop/receive": row(staff(200)),
  "GET /shop/receive/find": row(staff(422)),
  // It is here already, so both lead to its page.
  "GET /shop/receive/:number": row(staff(303)),
  "POST /shop/receive/:number": row(staff(303)),
  "GET /shop/jobs/:number": row(staff(200), { tells: true }),
  "POST /shop/jobs/:number/state": row(staff(409)),
  "POST /shop/jobs/:number/undo": row(staff(409)),
  "GET /shop/jobs/:number/sheet": row(staff(200)),
  // The service worker that keeps this sheet readable without the network: it holds nothing of the job.
  "GET /shop/jobs/:number/sheet/offline.js": row(staff(200)),
  "POST /shop/jobs/:number/sheet/:step": row(staff(422), {
    at: ({ mine }) => `/shop/jobs/${mine.number}/sheet/screws`,
  }),
  "GET /shop/jobs/:number/approval": row(staff(200)),
  "POST /shop/jobs/:number/approval": row(staff(422)),
  "POST /shop/jobs/:number/approval/reply": row(staff(422)),
  "POST /shop/jobs/:number/approval/withdraw": row(staff(409)),
  "GET /shop/jobs/:number/photos": row(staff(200)),
  "POST /shop/jobs/:number/photos": row(staff(422)),
  "GET /shop/jobs/:number/photos/:id": row(staff(200), { kept: "private, no-cache" }),
  "POST /shop/jobs/:number/photos/:id/remove": row(staff(303), {
    at: ({ mine }) => `/shop/jobs/${mine.number}/photos/no-such-photo/remove`,
  }),
  "GET /shop/jobs/:number/record": row(staff(200)),
  "POST /shop/jobs/:number/record/correct": row(managers(409)),
  "GET /shop/jobs/:number/move": row(staff(200)),
  "POST /shop/jobs/:number/move": row(staff(422)),
  "GET /shop/jobs/:number/cancel": row(managers(303)),
  "POST /shop/jobs/:number/cancel": row(managers(303)),
  "GET /shop/jobs/:number/link": row(managers(200)),
  "POST /shop/jobs/:number/link": row(managers(409)),
  "GET /shop/jobs/:number/link/:pass": row(staff(410), {
    at: ({ mine }) => `/shop/jobs/${mine.number}/link/no-such-pass`,
  }),
  "GET /shop/records": row(managers(200)),
  "GET /shop/records.jsonl": row(managers(200)),
  "GET /shop/rise": row(staff(200)),

  "POST /shop/jobs/:number/parts/use": row(staff(422)),
  "POST /shop/jobs/:number/parts/take-back": row(staff(422)),
  "POST /shop/jobs/:number/parts/add": row(staff(422)),
  "POST /shop/jobs/:number/parts/put-away": row(staff(422)),
  "GET /shop/parts": row(staff(200)),
  "GET /shop/parts/order": row(staff(200)),
  "GET /shop/parts/:part/:family": row(staff(200), { at: () => `${LOCK_NUTS}` }),
  "POST /shop/parts/:part/:family/receive": row(staff(422), { at: () => `${LOCK_NUTS}/receive` }),
  "POST /shop/parts/:part/:family/count": row(staff(422), { at: () => `${LOCK_NUTS}/count` }),

  "GET /shop/book": row(staff(200)),
  "POST /shop/book": row(staff(422)),
  "GET /shop/book/:call": row(staff(404)),
  "GET /shop/book/:call/answers": row(staff(404)),
  "POST /shop/book/:call/answers": row(staff(404)),
  "POST /shop/book/:call/hold": row(staff(404)),
  "POST /shop/book/:call/confirm": row(staff(404)),

  "GET /shop/settings": row(managers(200)),
  "POST /shop/settings": row(managers(422)),

  "GET /shop/account": row(staff(200)),
  "POST /shop/account/rename": row(staff(422)),
  "POST /shop/account/passkey-options": row(staff(200)),
  "POST /shop/account/passkeys": row(staff(422)),
  "POST /shop/account/passkeys/remove": row(staff(303)),
  "POST /shop/account/sign-out": row(staff(303)),
  "POST /shop/account/sign-out-others": row(staff(303)),

  "GET /shop/staff": row(managers(200)),
  "POST /shop/staff/invite": row(managers(200)),
  "GET /shop/staff/:id": row(managers(200)),
  "POST /shop/staff/:id/rename": row(managers(422)),
  "POST /shop/staff/:id/role": row(managers(303), form({ role: "bench" })),
  "POST /shop/staff/:id/link": row(managers(200)),
  "POST /shop/staff/:id/passkeys/remove": row(managers(303)),
  "POST /shop/staff/:id/sign-out-all": row(managers(303)),
  "GET /shop/staff/:id/end": row(managers(200)),
  "POST /shop/staff/:id/end": row(managers(303)),

  // Last: it ends what all rows before it need.
  "POST /shop/sign-out": row(all(303)),
};
