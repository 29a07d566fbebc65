/** One field that was not accepted, and what would be: `{ field: "lastRebuild.date", accepted: "a date, YYYY-MM-DD" }`. */
export type FieldError = { readonly field: string; readonly accepted: string };

/** An answer that says no: RFC 9457. `reason` is for programs, `detail` for the person who can mend it. */
export type Problem = {
  readonly status: keyof typeof STATUS_PHRASES;
  readonly detail: string;
  readonly reason?: string;
  readonly errors?: readonly FieldError[];
  /** Members of its own, as RFC 9457 section 3.2 allows. */
  readonly more?: Readonly<Record<string, unknown>>;
  readonly headers?: Readonly<Record<string, string>>;
};

/** Problems here have no page of their own, so `type` is `about:blank` and the title is the status phrase (4.2.1). */
export const STATUS_PHRASES = {
  400: "Bad Request",
  401: "Unauthorized",
  403: "Forbidden",
  404: "Not Found",
  405: "Method Not Allowed",
  409: "Conflict",
  413: "Content Too Large",
  415: "Unsupported Media Type",
  422: "Unprocessable Content",
  429: "Too Many Requests",
  500: "Internal Server Error",
  503: "Service Unavailable",
} as const;

/** @example problem({ status: 404, detail: "There is no such booking." }).status // 404 */
export function problem({ status, detail, reason, errors, more, headers }: Problem): Response {
  const body = { type: "about:blank", title: STATUS_PHRASES[status], status, detail, reason, errors, ...more };
  return Response.json(body, { status, headers: { ...headers, "content-type": "application/problem+json" } });
}

/** Input that is well formed but not accepted, each field named. */
export const notAccepted = (errors: readonly FieldError[]): Response =>
  problem({ status: 422, detail: "Some fields are not accepted; each is named with what would be.", errors });
