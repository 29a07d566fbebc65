import type { CodeStanding } from "#shared/job/record-standing.ts";
import { slipText } from "#shared/messages/record-words.ts";

/** The page on which anybody checks the code of a service record. */
export const CHECK = {
  title: "Check a service record",
  how: "Type the code from the printed record. Small letters, gaps and dashes do not matter.",
  code: "Code of the record",
  check: "Check it",
  notACode: "This is not a whole code. It has the job number, four groups of four signs, and one more sign.",
  checkSymbolWrong: "One sign is wrong or two are swapped. Compare the code with the paper.",
  another: "Check another code",
  date: "Date",
  family: "Unit",
  serial: "Serial number ends in",
  slip: "Slip as left",
  nothing: "Not known",
  slipText,
  compare: "Compare this with the paper. What differs was not written by us.",
  newer: "The code of the record that counts now",
  provesTitle: "What this proves",
  proves:
    "Each record is sealed with a hash of its whole text and of the record before it. The code holds part of that hash. We have just worked the hash out again.",
} as const;

/** What a code's standing means, as a heading and in a sentence. */
export const STANDING_WORDS: Readonly<
  Record<CodeStanding["is"] | "damaged-later", { readonly title: string; readonly says: string }>
> = {
  genuine: { title: "Genuine and unchanged", says: "We wrote this record, and nothing in it has changed since." },
  corrected: {
    title: "Genuine, but corrected since",
    says: "We wrote this record. A later one has taken its place, and that one counts now.",
  },
  "taken-back": { title: "Taken back", says: "We wrote this record and took it back. It does not count." },
  "not-known": { title: "Not known", says: "We have no record with this code. Compare the code with the paper." },
  damaged: {
    title: "Our records are damaged here",
    says: "What we have stored does not fit together, so we cannot vouch for this record. Please call us.",
  },
  "damaged-later": {
    title: "Genuine, but later records are damaged",
    says: "We wrote this record. What we stored after it does not fit together, so we cannot say whether it was corrected. Please call us.",
  },
};
