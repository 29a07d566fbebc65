import { env, exports } from "cloudflare:workers";
import { beforeAll, describe, expect, it } from "vitest";
import { LEAST_ROLE } from "#src/bench/permissions.ts";
import { siteOf } from "#src/site.ts";
import { atWork, idOf, SECURE } from "#tests/bench/staff-at-work.ts";
import { MONDAY, setClock, WARM_UP } from "#tests/bench/the-shop.ts";
import { type BenchJob, browsersOf, CALLERS, type Caller, SECRETS, twoJobs } from "#tests/http/callers.ts";
import { ROUTES, type Row } from "#tests/http/route-table.ts";

let jobs: Awaited<ReturnType<typeof twoJobs>>;
let browsers: Awaited<ReturnType<typeof browsersOf>>;
let leaver = "";

beforeAll(...WARM_UP);
beforeAll(async () => {
  setClock(MONDAY);
  jobs = await twoJobs();
  const { manager, name } = await atWork("bench");
  leaver = await idOf(manager, name);
  browsers = await browsersOf();
});

const routes = siteOf(env)
  .routes.filter(({ method }) => method !== "ALL")
  .map(({ method, path }) => `${method} ${path}`);

it("has a row for every route, and no row for a route that is gone", () => {
  expect(differences(routes, Object.keys(ROUTES))).toEqual({ missing: [], gone: [] });
});

it("has a least role for every address behind the sign-in, and for no other", () => {
  const behind = Object.entries(ROUTES)
    .filter(([route, { gets }]) => gets[0] === 401 && route.includes(" /shop") && gets[4] !== 401)
    .map(([route]) => route.split(" ")[1] ?? "");
  expect(differences(behind, Object.keys(LEAST_ROLE))).toEqual({ missing: [], gone: [] });
});

describe.each(Object.entries(ROUTES))("%s", (route, row) => {
  it.each(CALLERS)("gives the %s what is theirs", async (caller) => {
    const answer = await askAs(caller, route, row);
    const status = row.gets[CALLERS.indexOf(caller)];
    expect(answer.status).toBe(status);
    const text = await answer.text();
    const secrets = SECRETS.filter((secret) => text.includes(secret));
    // Only the owner and the shop may be told, and only where they are let in.
    const isLetIn = ![401, 403, 404].includes(answer.status);
    const mayKnow = isLetIn && (caller === "owner" || caller === "bench" || caller === "manager");
    if (!mayKnow) expect(secrets).toEqual([]);
    else if (row.tells) expect(secrets).not.toEqual([]);
    checkHeaders(answer, answer.status === 200 ? (row.kept ?? "no-store") : "no-store");
  });
});

const differences = (there: readonly string[], told: readonly string[]) => ({
  missing: there.filter((one) => !told.includes(one)),
  gone: told.filter((one) => !there.includes(one)),
});

function askAs(caller: Caller, route: string, row: Row): Promise<Response> {
  const [method = "", pattern = ""] = route.split(" ");
  const token =
    { owner: jobs.mine.token, "owner of another job": jobs.other.token }[caller as string] ??
    "no-such-token-of-anybody";
  const target = { token, mine: jobs.mine, staff: leaver };
  const path = row.at?.(target) ?? filled(pattern, { token, mine: jobs.mine });
  const { cookie, from } = browsers[caller];
  const body = method === "POST" ? new URLSearchParams(row.form?.(target)) : null;
  const isApi = path.startsWith("/api");
  return exports.default.fetch(`${SECURE}${path}`, {
    method,
    redirect: "manual",
    headers: {
      cookie,
      "cf-connecting-ip": from,
      "sec-fetch-site": "same-origin",
      // An owner who comes as a program shows the link's token.
      ...(isApi && caller.startsWith("owner") && { authorization: `Bearer ${token}` }),
    },
    body,
  });
}

const filled = (pattern: string, { token, mine }: { readonly token: string; readonly mine: BenchJob }): string =>
  pattern
    .replace(":token", token)
    .replace(":number", mine.number)
    .replace("photos/:id", `photos/${mine.photo}`)
    .replace(":id", leaver)
    .replace(":call", "no-such-call");

/** Headers of every answer (ASVS 5.0, 3.4.1 to 3.4.6 and 14.2.2). */
function checkHeaders({ headers }: Response, kept: string): void {
  const policy = headers.get("content-security-policy") ?? "";
  for (const part of ["default-src 'none'", "object-src 'none'", "base-uri 'none'", "frame-ancestors 'none'"])
    expect(policy).toContain(part);
  expect(policy).not.toContain("unsafe");
  expect(headers.get("strict-transport-security")).toBe("max-age=63072000; includeSubDomains");
  expect(headers.get("x-content-type-options")).toBe("nosniff");
  expect(headers.get("referrer-policy")).toBe("same-origin");
  expect(headers.get("cache-control")).toContain(kept);
}
