import { Hono } from "hono";
import { NEW_LINK } from "#shared/messages/shop-change-words.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import { NewLinkPage } from "#src/bench/change-pages.tsx";
import type { JobEnv } from "#src/bench/job-env.tsx";
import { linkPagePath, tokenByPass } from "#src/bench/link-pass.ts";
import { OwnerLinkPage } from "#src/bench/owner-link-page.tsx";
import { ownerToken, sha256Hex } from "#src/http/owner-link.ts";
import { readForm } from "#src/http/read-form.ts";

/** Making a new link for the owner, which ends the one before. */
export function linkRoutes(needs: BenchNeeds) {
  const PATH = "/:number/link";
  return new Hono<JobEnv>()
    .get(PATH, (c) => c.html(<NewLinkPage job={c.var.job} front={c.var.front} />))
    .post(PATH, async (c) => {
      const { job, front, staff } = c.var;
      const { generation = "" } = await readForm(c);
      const next = job.linkGeneration + 1;
      const linkHash = await sha256Hex(await ownerToken(needs.linkKey, job.booking.id, next));
      // A page sent again, or one of two open ones, must not end the link that was just made.
      const isNewest = generation === String(job.linkGeneration);
      const reissued = isNewest
        ? await needs.shop.reissueLink({ number: job.number, generation: next, linkHash, staff: staff.name })
        : null;
      if (reissued?.ok) return c.redirect(await linkPagePath(reissued.value, needs), 303);
      return c.html(<NewLinkPage job={job} front={front} problem={NEW_LINK.changedMeanwhile} />, 409);
    })
    .get(`${PATH}/:pass`, async (c) => {
      const { job, front } = c.var;
      const token = await tokenByPass(job, c.req.param("pass"), needs);
      const link = token === null ? null : `${needs.origin(c.req.raw)}/tag/${token}`;
      return c.html(<OwnerLinkPage front={front} number={job.number} link={link} />, link === null ? 410 : 200);
    });
}
