import { type Context, Hono } from "hono";
import { slotIcs } from "#shared/calendar/slot-ics.ts";
import { instantOf } from "#shared/calendar/zone-clock.ts";
import { step } from "#shared/intake/conversation.ts";
import { answersFrom, type QuestionId } from "#shared/intake/draft.ts";
import { holdRefusedWords } from "#shared/messages/hold-refused-words.ts";
import { ICS_WORDS } from "#shared/messages/tag-words.ts";
import type { HoldRefusal } from "#shared/shop/booking.ts";
import { planJob } from "#shared/shop/job-plan.ts";
import { wouldChange } from "#shared/triage/would-change.ts";
import { readForm } from "#src/http/read-form.ts";
import { droppedIn } from "#src/owner/dropped.tsx";
import { type FreeTime, freeTime } from "#src/owner/free-time.ts";
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
      return c.html(await page(needs, sitting, { dropped: droppedIn(c.req.query("dropped")) }));
    })
    .post("/verdict/hold", async (c) => {
      const sitting = await sittingOf(c, needs);
      if (!isFinished(sitting)) return c.redirect("/intake", 303);
      const held = await holdFor(c, needs, sitting, await readForm(c));
      if (held.ok) return c.redirect("/confirm", 303);
      return c.html(await page(needs, sitting, { refusal: held.refusal }), 409);
    })
    .get("/verdict/due.ics", async (c) => {
      const sitting = await sittingOf(c, needs);
      const { clocks } = planJob(answersFrom(sitting.stored.draft), sitting.now.onDate, sitting.settings);
      const { rebuildBy } = clocks;
      return !isFinished(sitting) || rebuildBy === null ? c.notFound() : dueIcs(c, needs, sitting, rebuildBy);
    });
}

const isFinished = ({ stored, now }: Sitting): boolean => step(stored.draft, now).next === null;

type Shown = { readonly dropped?: readonly QuestionId[]; readonly refusal?: HoldRefusal };

async function page(needs: OwnerNeeds, sitting: Sitting, { dropped = [], refusal }: Shown) {
  const { stored, settings, now } = sitting;
  const answers = answersFrom(stored.draft);
  const plan = planJob(answers, now.onDate, settings);
  return (
    <VerdictPage
      front={settings.front}
      draft={stored.draft}
      plan={plan}
      changes={wouldChange(answers, now.onDate, settings.triage)}
      dropped={dropped}
      free={freshTime(needs, sitting, refusal) ?? (await freeTime(needs, plan.judgement.verdict))}
      booked={stored.booked}
      wish={needs.newId()}
      {...(refusal === undefined ? {} : { notice: holdRefusedWords(refusal) })}
    />
  );
}

/** What is free at this moment, which a refusal brings along where the time itself was the reason. */
const freshTime = (needs: OwnerNeeds, { settings }: Sitting, refusal: HoldRefusal | undefined): FreeTime | null =>
  refusal !== undefined && "offers" in refusal
    ? { offers: refusal.offers, asOf: needs.now(), zone: settings.calendar.zone }
    : null;

const MORNING_MINUTE = 9 * 60;
const HALF_HOUR_MS = 30 * 60_000;

/** The due date as an entry for the owner's own calendar: a reminder that needs no message. */
function dueIcs(c: Context, needs: OwnerNeeds, sitting: Sitting, due: string) {
  const { front, calendar } = sitting.settings;
  const startsAt = instantOf(calendar.zone, due, MORNING_MINUTE);
  const origin = needs.origin(c.req.raw);
  const event = slotIcs({
    uid: needs.newId(),
    sequence: 0,
    status: "confirmed",
    changedAt: needs.now(),
    startsAt,
    endsAt: startsAt + HALF_HOUR_MS,
    summary: ICS_WORDS.dueTitle,
    description: ICS_WORDS.dueText(front.name, `${origin}/`, front.phone),
    location: front.name,
    url: `${origin}/`,
  });
  c.header("content-disposition", 'attachment; filename="service-due.ics"');
  return c.body(event, 200, { "content-type": "text/calendar; charset=utf-8" });
}
