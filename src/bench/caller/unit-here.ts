import type { Context } from "hono";
import { draftFrom } from "#shared/intake/draft.ts";
import type { Fields } from "#shared/intake/read-answer.ts";
import type { Job } from "#shared/shop/booking.ts";
import { readJobNumber } from "#shared/shop/job-number.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import { filledFrom } from "#src/bench/caller/caller-fields.ts";
import type { TypedContact } from "#src/http/contact-form.ts";

/** Whether the shop has the unit in its hands, and which cancelled job it came for. */
export type UnitHere = {
  readonly unitHere: boolean;
  readonly again: string | null;
  /** Both as the end of an address: a conversation keeps answers alone, so every page of a call hands this on. */
  readonly query: string;
};

export function unitHereIn(c: Context): UnitHere {
  if (c.req.query("here") === undefined) return { unitHere: false, again: null, query: "" };
  const read = readJobNumber(c.req.query("again") ?? "");
  const again = read.ok ? read.value : null;
  return { unitHere: true, again, query: again === null ? "?here" : `?here&again=${again}` };
}

/** The cancelled job that the unit came for: what is known of it need not be asked again. */
export async function cancelledJob({ shop }: Pick<BenchNeeds, "shop">, { again }: UnitHere): Promise<Job | null> {
  const job = again === null ? null : await shop.job(again);
  return job?.state === "cancelled" ? job : null;
}

/** The form of the questions as it was answered then. */
export const answeredThen = (job: Job | null): Fields => (job === null ? {} : filledFrom(draftFrom(job.answers)));

/** The form of the contact as it was filled in then. The sum to go ahead with was agreed for a price of then. */
export const contactThen = ({ owner: { name, phone = "", email = "" }, returnTo, serial }: Job): TypedContact => ({
  name,
  phone,
  email,
  serial: serial ?? "",
  ...wayBack(returnTo),
});

function wayBack(to: Job["returnTo"]): TypedContact {
  if ("collect" in to) return { collect: "yes" };
  const [line1 = "", line2 = ""] = to.lines;
  return { line1, line2, region: to.region, postcode: to.postcode, country: to.country };
}
