import { Hono } from "hono";
import { readRecordCode } from "#shared/job/record-code.ts";
import { CHECK } from "#shared/messages/check-words.ts";
import { CheckPage, StandingPage } from "#src/owner/check-page.tsx";
import type { OwnerNeeds } from "#src/owner/owner-needs.ts";

/** Where anybody checks the code of a service record. Nobody is asked who they are: who has the code holds the paper. */
export function checkRoutes({ shop }: OwnerNeeds) {
  const front = async () => (await shop.settings()).settings.front;
  return new Hono()
    .get("/check", async (c) => {
      const typed = c.req.query("code")?.trim();
      if (typed === undefined) return c.html(<CheckPage front={await front()} />);
      if (typed === "") return c.html(<CheckPage front={await front()} problem={CHECK.notACode} />, 422);
      return c.redirect(`/check/${encodeURIComponent(typed.slice(0, LONGEST_TYPED))}`, 303);
    })
    .get("/check/:code", async (c) => {
      const typed = c.req.param("code");
      const code = readRecordCode(typed);
      if (!code.ok) {
        const problem = code.refusal.reason === "not-a-code" ? CHECK.notACode : CHECK.checkSymbolWrong;
        return c.html(<CheckPage front={await front()} typed={typed} problem={problem} />, 422);
      }
      const standing = await shop.checkCode(code.value);
      return c.html(<StandingPage front={await front()} code={code.value} standing={standing} />);
    });
}

/** Longer than any code with a gap after each sign. */
const LONGEST_TYPED = 80;
