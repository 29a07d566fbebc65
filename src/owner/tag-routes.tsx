import { type Context, Hono } from "hono";
import { unreachable } from "#shared/basics/unreachable.ts";
import { slotIcs } from "#shared/calendar/slot-ics.ts";
import { CONTACT_WORDS } from "#shared/messages/contact-words.ts";
import { ICS_WORDS, TAG_WORDS } from "#shared/messages/tag-words.ts";
import { VERDICT_SHORT } from "#shared/messages/verdict-words.ts";
import { workNow } from "#shared/shop/agreed-work.ts";
import type { ChangeRefusal, Job } from "#shared/shop/booking.ts";
import { readJobNumber } from "#shared/shop/job-number.ts";
import { readForm } from "#src/http/read-form.ts";
import { linkHashOf, ownedJob, tokenOf } from "#src/owner/owned-job.ts";
import type { OwnerNeeds } from "#src/owner/owner-needs.ts";
import { ScannedPage } from "#src/owner/scanned-page.tsx";
import { TagPage } from "#src/owner/tag-page.tsx";

/** The owner's page of a booked job, opened by its link alone. */
export function tagRoutes(needs: OwnerNeeds) {
  return new Hono()
    .get("/tag/:token", async (c) => {
      const job = await ownedJob(c, needs);
      if (job === null) return c.notFound();
      return c.html(await page(c, needs, job, noticeIn(c.req.query("done"))));
    })
    .get("/tag/:token/slot.ics", async (c) => {
      const job = await ownedJob(c, needs);
      return job === null ? c.notFound() : icsAnswer(c, needs, job);
    })
    .post("/tag/:token/move", async (c) => {
      const job = await ownedJob(c, needs);
      if (job === null) return c.notFound();
      const { offer = "" } = await readForm(c);
      const moved = await needs.shop.moveBooking({ ...(await changeOf(c, job)), offer });
      return afterChange(c, needs, job, moved.ok ? "moved" : moved.refusal);
    })
    .post("/tag/:token/cancel", async (c) => {
      const job = await ownedJob(c, needs);
      if (job === null) return c.notFound();
      const cancelled = await needs.shop.cancelBooking(await changeOf(c, job));
      return afterChange(c, needs, job, cancelled.ok ? "cancelled" : cancelled.refusal);
    })
    .get("/job/:number", async (c) => {
      const number = readJobNumber(c.req.param("number"));
      if (!number.ok) return c.notFound();
      // Somebody of the shop who opens the code with the phone's own camera is at the parcel at once.
      if (await needs.isStaff(c)) return c.redirect(`/shop/receive/${number.value}`, 303);
      const { front } = (await needs.shop.settings()).settings;
      return c.html(<ScannedPage front={front} number={number.value} />);
    });
}

const changeOf = async (c: Context, { booking }: Job) =>
  ({ booking: booking.id, linkHash: await linkHashOf(c), by: "owner" }) as const;

async function afterChange(c: Context, needs: OwnerNeeds, job: Job, done: "moved" | "cancelled" | ChangeRefusal) {
  if (typeof done === "string") return c.redirect(`/tag/${tokenOf(c)}?done=${done}`, 303);
  const { front } = (await needs.shop.settings()).settings;
  return c.html(await page(c, needs, job, refusalWords(done, front.phone)), 409);
}

function refusalWords(refusal: ChangeRefusal, phone: string): string {
  switch (refusal.reason) {
    case "slot-not-offered":
      return CONTACT_WORDS.taken;
    case "too-late":
      return TAG_WORDS.tooLate(phone);
    case "unit-here":
      return TAG_WORDS.unitHere(phone);
    case "already-cancelled":
    case "no-such-booking":
      return TAG_WORDS.alreadyCancelled;
    default:
      return unreachable(refusal);
  }
}

const noticeIn = (done: string | undefined): string | undefined =>
  done === "booked" || done === "moved" || done === "cancelled" ? TAG_WORDS[done] : undefined;

async function page(c: Context, needs: OwnerNeeds, job: Job, notice: string | undefined) {
  const linkHash = await linkHashOf(c);
  const [{ settings }, approvals, findings] = await Promise.all([
    needs.shop.settings(),
    job.state === "booked" ? [] : needs.shop.approvalsByLink(linkHash),
    job.state === "booked" ? null : needs.shop.findingsByLink(linkHash),
  ]);
  const origin = needs.origin(c.req.raw);
  const mayChange = job.state === "booked" && needs.now() <= job.booking.changeableUntil;
  return (
    <TagPage
      front={settings.front}
      job={job}
      link={`${origin}/tag/${tokenOf(c)}`}
      jobLink={`${origin}/job/${job.number}`}
      offers={mayChange ? await needs.shop.offers({ verdict: job.plan.judgement.verdict }) : []}
      mayChange={mayChange}
      wish={needs.newId()}
      approvals={approvals}
      findings={findings}
      notice={notice}
    />
  );
}

async function icsAnswer(c: Context, needs: OwnerNeeds, job: Job) {
  const { front } = (await needs.shop.settings()).settings;
  const { time, sequence, id } = job.booking;
  const link = `${needs.origin(c.req.raw)}/tag/${tokenOf(c)}`;
  const event = slotIcs({
    uid: id,
    sequence,
    status: job.state === "cancelled" ? "cancelled" : "confirmed",
    changedAt: job.history.at(-1)?.at ?? job.bookedAt,
    startsAt: time.startsAt,
    endsAt: time.endsAt,
    summary: ICS_WORDS.jobTitle(VERDICT_SHORT[workNow(job).work], job.number),
    description: ICS_WORDS.jobText(job.postBy, link),
    location: front.name,
    url: link,
  });
  c.header("content-disposition", `attachment; filename="job-${job.number}.ics"`);
  return c.body(event, 200, { "content-type": "text/calendar; charset=utf-8" });
}
