/** What the shop reads around a record. */
export const SHOP_RECORD = {
  link: "Service record",
  entries: "Sealed entries of this job",
  when: "When",
  who: "Who",
  kind: "What",
  why: "Why",
  code: "Code",
  kinds: { service: "Record", correction: "Correction", withdrawal: "Taken back" },
  shop: "The shop",
  back: (number: string) => `Job ${number}`,
  correctTitle: "Correct the record",
  correctHow:
    "The record stays as it is. A new one takes its place, with your name and the reason. Write nothing about the owner: records are kept when an owner's data is erased.",
  managersOnly: "Only a manager can correct a record.",
  hours: "Engine hours",
  hoursHint: "Empty where nobody knows them.",
  serial: "Serial number of the unit",
  serialHint: "The unit's earlier services are found by it. Empty where it cannot be read.",
  found: "Readings as found, lbf·ft",
  left: "Readings as left, lbf·ft",
  readingsHint: "As many as were taken, with gaps between them.",
  parts: "Parts that went in",
  note: "Note on the record",
  reason: "Why it is corrected",
  reasonHint: "Shown on the record.",
  correct: "Seal the correction",
  done: "The correction is sealed. It counts from now on.",
  changed: "The record was changed meanwhile. This is how it stands now: look again, and correct it once more.",
  problems: (count: number) => (count === 1 ? "One field needs another look" : `${count} fields need another look`),
  problemsSay: "Nothing was sealed. What you typed is still here.",
  badHours: "Hours from 0 to 20000, or nothing.",
  badReadings: "Numbers above 0 and up to 200, 50 at the most.",
  noReadings: "At least one reading: a slip that was read is not unread later.",
  badCount: "A whole number from 0 to 99.",
  badText: (most: number) => `At most ${most} characters.`,
  noReason: "Say why.",
} as const;

/** The page on all records of the shop. */
export const CHAIN = {
  title: "Service records",
  link: "Service records",
  whole: (entries: number) =>
    entries === 0
      ? "No record is sealed yet."
      : `All ${entries} entries were worked out again just now. Each fits the one before it.`,
  broken: (step: number) =>
    `Entry ${step} does not fit the one before it, or its text was changed. It and what comes after it cannot be believed. Compare it with the last backup.`,
  newest: "Hash of the newest entry",
  download: "Download all records (JSON lines)",
  checkTitle: "How to check it by hand",
  check: [
    "Each line of the file is one entry: the hash of the entry before, the record's text, its own hash, its place.",
    "An entry's hash is the SHA-256 of the hash before it, a line feed, and the record's text, byte for byte.",
    "Before the first entry stand 64 zeros. Each entry's “before” is the “hash” of the line above it.",
    "In any shell with sha256sum, these lines print the hash of line 3. It must be the “hash” at the end of that line:",
  ],
  command: [
    "line=$(sed -n 3p records.jsonl)",
    `before=\${line#*'"before":"'}; before=\${before%%'"'*}`,
    `body=\${line#*'"body":'}; body=\${body%',"hash":'*}`,
    `printf '%s\\n%s' "$before" "$body" | sha256sum`,
  ].join("\n"),
  proves:
    "A chain shows every change in the middle. It cannot show that its newest entries were cut off, or that all of it was made anew. The codes on the records that owners hold show that: keep the newest hash somewhere else, too.",
} as const;

/** What the shop has learnt of its lock nuts. */
export const RISE = {
  title: "Lock-nut rise",
  says: "How much tightening the lock nut raises the slip, learnt from your own service records.",
  family: "Unit family",
  learnt: "Rise, lbf·ft",
  interval: (low: string, high: string) => `between ${low} and ${high}`,
  next: "Next unit",
  counted: "Counted",
  outliers: "Outliers, not counted",
  none: "None",
  outlier: (job: string, rise: string) => `${job}: ${rise}`,
  prior: (mean: number, sd: number) => `Before any record: ${mean} lbf·ft, standard deviation ${sd} (settings).`,
  doubtful:
    "More than a quarter do not belong together. Do not trust the figure: check the tools, or the spreads in the settings.",
  confidence: (percent: string) =>
    `Intervals with ${percent} confidence. Outliers lie more than three standard deviations off.`,
} as const;
