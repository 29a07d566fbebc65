import { ASKING } from "#shared/messages/shop-approval-words.ts";
import type { Job } from "#shared/shop/booking.ts";

/** The way to the question to the owner: the one that waits, a new one, or those before. */
export function AskLink({ job }: { readonly job: Job }) {
  const wasAsked = job.history.some(({ what }) => what === "ask-owner" || what === "work-upgraded");
  const words = job.state === "on-bench" ? ASKING.open : wasAsked ? ASKING.openQuestion : null;
  if (words === null) return null;
  return (
    <p class="actions screen">
      <a class={`button${job.state === "owner-to-decide" ? "" : " quiet"}`} href={`/shop/jobs/${job.number}/approval`}>
        {words}
      </a>
    </p>
  );
}
