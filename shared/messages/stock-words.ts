import type { ShelfFamily } from "#shared/shop/shelf.ts";
import type { StockChange } from "#shared/shop/stock-book.ts";

export const SHELF_WORDS: Readonly<Record<ShelfFamily, string>> = {
  "shim-stack": "shim stack",
  "set-nut": "set nut",
  any: "all units",
};

/** @example shelfText({ name: "Lock nut", family: "set-nut" }) // "Lock nut (set nut)" */
export const shelfText = ({ name, family }: { readonly name: string; readonly family: ShelfFamily }): string =>
  `${name} (${SHELF_WORDS[family]})`;

export const STOCK = {
  title: "Parts",
  part: "Part",
  onHand: "On hand",
  reserved: "Reserved",
  free: "Free",
  state: "State",
  low: "Low",
  enough: "Enough",
  countAgain: "Count again",
  countAgainSays: "More was used than the book knew of. Count what is there.",
  says: "Reserved: what open jobs still take. Free: on hand and not reserved. What is low stands first.",
  toOrder: (kinds: number) => (kinds === 1 ? "Order 1 kind of part" : `Order ${kinds} kinds of parts`),
  nothingToOrder: "Nothing to order.",

  receive: "Receive parts",
  received: "The parts are on the shelf.",
  howMany: "How many",
  where: "From where, or which delivery",
  receiveButton: "Put them on the shelf",

  count: "Count this shelf",
  counted: "The book says what you counted.",
  found: "How many are there",
  why: "Why it differs, or who counted",
  countButton: "Put the book right",

  history: "What came and went",
  noHistory: "Nothing came or went yet.",
  change: "Change",
  after: "Then on hand",
  when: "When",
  who: "Who",
  what: "What",
  job: "Job",
  note: "Note",
  back: "Back to the parts",
  notDone: "Nothing was changed",
  mend: (count: number) => (count === 1 ? "1 entry is not accepted" : `${count} entries are not accepted`),
  number: (least: number, most: number) => `Accepted: a whole number from ${least} to ${most}.`,
  noteNeeded: "Accepted: a few words, at most 200 characters.",
} as const;

export const STOCK_KINDS: Readonly<Record<StockChange["kind"], string>> = {
  receipt: "Received",
  use: "Used",
  "use-undone": "Use taken back",
  count: "Counted",
};

export const ORDER = {
  title: "Parts to order",
  says: (days: number, spare: number, date: string) =>
    `For jobs whose bench time starts within ${days} days from ${date}, and ${spare} of each to spare.`,
  count: "Order",
  because: "For",
  spare: "to keep the spare",
  forJobs: (jobs: readonly string[]) => `jobs ${jobs.join(", ")}`,
  forJob: (job: string) => `job ${job}`,
  countFirst: "Count it first: the book is in doubt.",
  none: "Nothing needs to be ordered.",
} as const;

/** Parts on a job's page. */
export const JOB_PARTS = {
  title: "Parts",
  laidOut: "Laid out",
  used: "Used",
  shelf: "On the shelf",
  use: (count: number, shelf: string | null) => `Used ${count}${shelf === null ? "" : `, ${shelf}`}`,
  useMore: (shelf: string | null) => `Used 1 more${shelf === null ? "" : `, ${shelf}`}`,
  takeBack: (shelf: string | null) => `Take 1 back${shelf === null ? "" : `, ${shelf}`}`,
  putAway: "Not needed",
  touch: (button: string, part: string) => `${button}: ${part}`,
  addedByBench: "Added at the bench.",
  more: "More parts",
  morePart: "Part",
  moreCount: "How many",
  moreButton: "Lay out",
  stock: "All parts",
  back: (number: string) => `Back to job ${number}`,
  refusedTitle: "The parts were not changed",
  refused: {
    "no-such-job": "No job has that number.",
    "no-such-shelf": "That part does not fit this unit.",
    "not-now": "Parts are used while the unit is here, and laid out until it is set.",
    "not-so-many": "There are not so many to take back or put away.",
    "not-accepted": "Accepted: a part of the list, and a whole number from 1 to 20.",
  },
} as const;
