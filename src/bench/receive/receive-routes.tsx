import { type Context, Hono } from "hono";
import { wallOf } from "#shared/calendar/zone-clock.ts";
import { moveRefusedText } from "#shared/messages/shop-move-words.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import { type JobEnv, offersAsk, withJob } from "#src/bench/job-env.tsx";
import { MOST_NOTE_CHARACTERS } from "#src/bench/move-form.tsx";
import { CancelledParcelPage, ParcelPage } from "#src/bench/receive/parcel-pages.tsx";
import { type Punctuality, punctualityOf } from "#src/bench/receive/punctuality.ts";
import { readScan, unswapped } from "#src/bench/receive/read-scan.ts";
import { ReceivePage } from "#src/bench/receive/receive-page.tsx";
import { readForm } from "#src/http/read-form.ts";
import { allowCamera } from "#src/http/secure-headers.ts";

/** Taking a parcel in: find its job, look at what is known of it, receive it. */
export function receiveRoutes(needs: BenchNeeds) {
  return new Hono<JobEnv>()
    .get("/", async (c) => {
      allowCamera(c);
      return c.html(<ReceivePage front={await front()} />);
    })
    .get("/find", async (c) => {
      const typed = (c.req.query("number") ?? "").slice(0, 300);
      const read = readScan(typed, needs.origin(c.req.raw));
      if (read.ok && (await needs.shop.job(read.value)) !== null) return c.redirect(`/shop/receive/${read.value}`, 303);
      allowCamera(c);
      const problem = read.ok ? "no-such-job" : read.refusal.reason;
      const meant = problem === "check-symbol-wrong" ? await known(unswapped(typed)) : [];
      return c.html(<ReceivePage front={await front()} notFound={{ typed, problem, meant }} />, read.ok ? 404 : 422);
    })
    .use("/:number", withJob(needs))
    .get("/:number", (c) => parcel(c))
    .post("/:number", async (c) => {
      const { job, staff } = c.var;
      const note = ((await readForm(c))["note"] ?? "").slice(0, MOST_NOTE_CHARACTERS);
      const wish = { number: job.number, move: "receive", staff: staff.name, ifState: "booked" } as const;
      const received = await needs.shop.moveJob({ ...wish, note });
      if (received.ok) return c.redirect(await afterwards(c), 303);
      const { refusal } = received;
      if (refusal.reason === "changed-meanwhile" && refusal.state !== "booked") return parcel(c);
      return c.html(<ParcelPage {...(await shown(c))} note={note} problem={moveRefusedText(refusal)} />, 409);
    });

  async function front() {
    return (await needs.shop.settings()).settings.front;
  }

  async function known(numbers: readonly string[]): Promise<readonly string[]> {
    const jobs = await Promise.all(numbers.map((number) => needs.shop.job(number)));
    return numbers.filter((_, at) => jobs[at] !== null);
  }

  /** Whoever scans the tag of a unit that is here already is at its job. */
  async function parcel(c: Context<JobEnv>): Promise<Response> {
    const { job } = c.var;
    if (job.state === "booked") return c.html(<ParcelPage {...(await shown(c))} note="" />);
    if (job.state === "cancelled") return c.html(<CancelledParcelPage front={c.var.front} job={job} />);
    return c.redirect(`/shop/jobs/${job.number}`, 303);
  }

  async function shown({ var: { job, front } }: Context<JobEnv>) {
    return { job, front, punctuality: await punctuality(job.booking.time) };
  }

  async function punctuality(time: Parameters<typeof punctualityOf>[0]): Promise<Punctuality> {
    const { zone } = (await needs.shop.settings()).settings.calendar;
    return punctualityOf(time, wallOf(zone, needs.now()).date, needs.now());
  }

  /** A unit that came late needs other bench time; one that came early may like some. */
  async function afterwards({ var: { job } }: Context<JobEnv>): Promise<string> {
    const { time } = job.booking;
    const came = await punctuality(time);
    const [soonest] = await needs.shop.offers({ ...offersAsk(job), unitHere: true });
    const isSooner = soonest !== undefined && Date.parse(soonest.startsAt) < time.startsAt;
    if (came === "late" || (came === "early" && isSooner)) return `/shop/jobs/${job.number}/move?received=${came}`;
    return `/shop/jobs/${job.number}?done=receive`;
  }
}
