import type { EntryRefusal } from "#shared/job/sheet-wish.ts";
import { UNSENT } from "#shared/messages/sheet-page-words.ts";
import { SHOP_JOB_STATE } from "#shared/messages/shop-words.ts";

/** Said where the sheet refuses an entry. */
export function entryRefusedText(refusal: EntryRefusal): string {
  switch (refusal.reason) {
    case "no-such-job":
      return "No job has that number.";
    case "not-on-bench":
      return `Not written: the job is ${stateText(refusal.state)}. Put it on the bench first.`;
    case "no-such-step":
      return "Not written: this unit has no such step.";
    case "other-writer":
      return UNSENT.otherWriter(refusal.writer);
    case "written-meanwhile":
      return "Somebody else wrote this step meanwhile. Look at both, and choose.";
    case "key-reused":
      return "Not written: this form was sent before with something else in it. Open the page anew.";
  }
}

/** @example stateText("part-to-come") // "part to come" */
export const stateText = (state: keyof typeof SHOP_JOB_STATE): string => SHOP_JOB_STATE[state].toLowerCase();
