import { type Context, Hono } from "hono";
import { slotIcs } from "#shared/calendar/slot-ics.ts";
import { instantOf } from "#shared/calendar/zone-clock.ts";
import { step } from "#shared/intake/conversation.ts";
import { answersFrom } from "#shared/intake/draft.ts";
import { CONTACT_WORDS } from "#shared/messages/contact-words.ts";
import { VERDICT_SHORT } from "#shared/messages/verdict-words.ts";
import { planJob } from "#shared/shop/job-plan.ts";
import { wouldChange } from "#shared/triage/would-change.ts";
import { holdFor } from "#src/owner/hold-time.ts";
import { type Sitting, sittingOf } from "#src/owner/own-draft.ts";
import type { OwnerNeeds } from "#src/owner/owner-needs.ts";
import { VerdictPage } from "#src/owner/verdict-page.tsx";

/** The verdict, and the first pick of bench time. */
export function verdictRoutes(needs: OwnerNeeds) {
  return new Hono()
    .get("/verdict", async (c) => {
      const sitting = await sittingOf(c, needs);
      if (!isFinished(sitting)) return c.redirect("/intake", 303);
      return c.html(await page(needs, sitting));
    })
    .post("/verdict/hold", async (c) => {
      const sitting = await sittingOf(c, needs);
      if (!isFinished(sitting)) return c.redirect("/intake", 303);
      const held = await holdFor(c, needs, sitting, await c.req.parseBody());
      if (held.ok) return c.redirect("/confirm", 303);
      const notice = held.refusal.reason === "too-many-holds" ? CONTACT_WORDS.tooMany : CONTACT_WORDS.taken;
      return c.html(await page(needs, sitting, notice), 409);
    })
    .get("/verdict/due.ics", async (c) => {
      const sitting = await sittingOf(c, needs);
      const { judgement } = planJob(answersFrom(sitting.stored.draft), sitting.now.onDate, sitting.settings);
      const { by } = judgement.due;
      if (!isFinished(sitting) || by === null) return c.notFound();
      return dueIcs(c, needs, sitting, { by, summary: `Charger clutch due: ${VERDICT_SHORT[judgement.due.kind]}` });
    });
}

const isFinished = ({ stored, now }: Sitting): boolean => step(stored.draft, now).next === null;

async function page(needs: OwnerNeeds, sitting: Sitting, notice?: string) {
  const { stored, settings, now } = sitting;
  const answers = answersFrom(stored.draft);
  const plan = planJob(answers, now.onDate, settings);
  return (
    <VerdictPage
      front={settings.front}
      draft={stored.draft}
      plan={plan}
      changes={wouldChange(answers, now.onDate, settings.triage)}
      offers={await needs.shop.offers({ verdict: plan.judgement.verdict })}
      wish={needs.newId()}
      {...(notice === undefined ? {} : { notice })}
    />
  );
}

const MORNING_MINUTE = 9 * 60;
const HALF_HOUR_MS = 30 * 60_000;

/** The due date as an entry for the owner's own calendar: a reminder that needs no message. */
function dueIcs(c: Context, needs: OwnerNeeds, sitting: Sitting, due: { by: string; summary: string }) {
  const { front, calendar } = sitting.settings;
  const startsAt = instantOf(calendar.zone, due.by, MORNING_MINUTE);
  const origin = needs.origin(c.req.raw);
  const event = slotIcs({
    uid: needs.newId(),
    sequence: 0,
    status: "confirmed",
    changedAt: needs.now(),
    startsAt,
    endsAt: startsAt + HALF_HOUR_MS,
    summary: due.summary,
    description: `Book bench time at ${front.name}: ${origin}/ or call ${front.phone}.`,
    location: front.name,
    url: `${origin}/`,
  });
  c.header("content-disposition", 'attachment; filename="service-due.ics"');
  return c.body(event, 200, { "content-type": "text/calendar; charset=utf-8" });
}
