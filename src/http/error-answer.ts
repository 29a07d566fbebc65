import type { Context } from "hono";
import { html } from "hono/html";
import { CSS } from "#build/assets.ts";
import { type Problem, problem, STATUS_PHRASES } from "#src/http/problem.ts";

/** Says no in the way the caller reads: problem details to a program, a plain page to a person. */
export function errorAnswer(c: Context, what: Problem): Response | Promise<Response> {
  return /^\/api(?:\/|$)/.test(c.req.path) ? problem(what) : c.html(page(what), what.status, { ...what.headers });
}

const page = ({ status, detail }: Problem) => html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${STATUS_PHRASES[status]}</title>
<link rel="stylesheet" href="/assets/${CSS.name}">
</head>
<body>
<main>
<h1>${STATUS_PHRASES[status]}</h1>
<p>${detail}</p>
<p><a href="/">Back to the start</a></p>
</main>
</body>
</html>
`;
