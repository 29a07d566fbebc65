import { Hono } from "hono";
import { RESUME } from "#shared/messages/owner-words.ts";
import { sha256Hex } from "#src/http/owner-link.ts";
import { PageFrame } from "#src/http/page-frame.tsx";
import { keepToken } from "#src/owner/own-draft.ts";
import type { OwnerNeeds } from "#src/owner/owner-needs.ts";

/** Going on with a conversation on another device. Opening the link changes nothing, so a preview of it does no harm. */
export function resumeRoutes(needs: OwnerNeeds) {
  return new Hono()
    .get("/resume/:token", async (c) => {
      const [{ settings }, stored] = await Promise.all([
        needs.shop.settings(),
        needs.shop.draft(await sha256Hex(c.req.param("token"))),
      ]);
      c.header("cache-control", "no-store");
      return c.html(
        <PageFrame title={RESUME.title} front={settings.front} kind="owner">
          <main id="main">
            <div class="sheet">
              <h1 tabindex={-1}>{RESUME.title}</h1>
              {stored === null ? <Gone /> : <GoOn token={c.req.param("token")} />}
            </div>
          </main>
        </PageFrame>,
        stored === null ? 404 : 200,
      );
    })
    .post("/resume/:token", async (c) => {
      const stored = await needs.shop.draft(await sha256Hex(c.req.param("token")));
      if (stored === null) return c.redirect("/", 303);
      keepToken(c, needs, c.req.param("token"));
      return c.redirect("/intake", 303);
    });
}

const GoOn = ({ token }: { readonly token: string }) => (
  <form method="post" action={`/resume/${token}`} class="actions" data-plain>
    <button type="submit">{RESUME.button}</button>
  </form>
);

const Gone = () => (
  <>
    <p>{RESUME.gone}</p>
    <p class="actions">
      <a class="button" href="/">
        Start
      </a>
    </p>
  </>
);
