/** How to pack, and what the tag page says around the tag. */
export const TAG_WORDS = {
  packTitle: "Drain, bag and post it",
  pack: [
    "Drain all oil and fuel out of the unit. Wipe it dry.",
    "Let it air outdoors for a day. If you can still smell fuel, do not post it.",
    "Close every opening. Seal the unit in a strong bag with something that soaks up oil.",
    "Put that bag in a second bag, then in a stiff box with padding all round.",
    "Write the job number on the box. Insure the parcel.",
  ],
  packSource: "USPS Publication 52, 343 and 451, for fuel and smell; the rest is common practice, no published source",
  boxTitle: "Put in the box",
  box: [
    "The whole unit with its impeller and gear. Do not take it apart.",
    "This tag, printed. Or a sheet with the job number.",
    "Loose parts and metal you found, in a small bag of their own.",
    "No battery, no fuel tank, and no paper that the bench should not see.",
  ],
  keep: "This link is the key to your job. Save it: no message is sent yet. Lost it? Call the shop for a new one.",
  tooLate: (phone: string): string => `The job can no longer be moved or cancelled here. Call the shop: ${phone}.`,
  moved: "Moved. The tag shows the new time. Please print it again.",
  cancelled: "Cancelled. The bench time is free again.",
  alreadyCancelled: "This job was cancelled before.",
} as const;
