import type { Context } from "hono";
import { html } from "hono/html";
import { CSS } from "#build/assets.ts";
import { ERROR_WORDS } from "#shared/messages/error-words.ts";
import { type Problem, problem } from "#src/http/problem.ts";

/** A problem with a heading for people; programs get the title that its status has. */
type ErrorAnswer = Problem & { readonly title: string };

/** Says no in the way the caller reads: problem details to a program, a plain page to a person. */
export function errorAnswer(c: Context, what: ErrorAnswer): Response | Promise<Response> {
  return /^\/api(?:\/|$)/.test(c.req.path)
    ? problem(what)
    : c.html(page(what, startOf(c.req.path)), what.status, { ...what.headers });
}

/** Whoever is in the shop's pages stays there. */
const startOf = (path: string): string => (/^\/shop(?:\/|$)/.test(path) ? "/shop" : "/");

const page = ({ title, detail }: ErrorAnswer, start: string) => html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
<link rel="stylesheet" href="/assets/${CSS.name}">
</head>
<body>
<main class="sheet">
<h1>${title}</h1>
<p>${detail}</p>
<p><a href="${start}">${ERROR_WORDS.back}</a></p>
</main>
</body>
</html>
`;
