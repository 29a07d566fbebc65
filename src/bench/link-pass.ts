import type { Job } from "#shared/shop/booking.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import { ownerToken } from "#src/http/owner-link.ts";
import { readToken, signToken } from "#src/http/signed-token.ts";

const PURPOSE = "show-owner-link";
const SHOWN_FOR_MS = 10 * 60_000;

type PassNeeds = Pick<BenchNeeds, "linkKey" | "now">;

/** Where the link just made is shown: an address that ends by itself, so a screen left open later shows nothing. */
export async function linkPagePath(job: Pick<Job, "number" | "linkGeneration">, needs: PassNeeds): Promise<string> {
  const pass = await signToken(needs.linkKey, {
    purpose: PURPOSE,
    nonce: nonceOf(job),
    expires: needs.now() + SHOWN_FOR_MS,
  });
  return `/shop/jobs/${job.number}/link/${pass}`;
}

/** The owner's token, where the pass is ours, still holds, and is for this job's newest link. */
export async function tokenByPass(job: Job, pass: string, needs: PassNeeds): Promise<string | null> {
  const read = await readToken(needs.linkKey, pass, { purpose: PURPOSE, now: needs.now() });
  if (!read.ok || read.value.nonce !== nonceOf(job)) return null;
  return ownerToken(needs.linkKey, job.booking.id, job.linkGeneration);
}

const nonceOf = ({ number, linkGeneration }: Pick<Job, "number" | "linkGeneration">) => `${number}.${linkGeneration}`;
