/** How to pack, and what the tag page says around the tag. */
export const TAG_WORDS = {
  title: "Job tag",
  cancelledTitle: "Cancelled job",
  qr: (number: string): string => `QR code of job ${number}`,
  sendTo: "Send it to",
  work: "Work",
  postBy: "Post it by",
  willSet: "What the bench will set",
  askedFirst: "Measured or asked first",
  keepTitle: "Keep this page",
  yourLink: "Your link",
  print: "Print the tag",
  copy: "Copy the link",
  calendar: "Put it in my calendar",
  changeTitle: "Move or cancel",
  changeUntil: (until: string): string => `You can do this here until ${until}.`,
  move: "Move it to another time",
  moveHere: "Move to this time",
  cancel: "Cancel the job",
  cancelHow: "The bench time goes to someone else. You can book again at any time.",
  cancelYes: "Yes, cancel it",
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
  unitHere: (phone: string): string =>
    `Your unit has come to the shop, so the job can no longer be moved or cancelled here. Call the shop: ${phone}.`,
  booked: "Booked. Print this tag and keep the link to this page.",
  moved: "Moved. The tag shows the new time. Please print it again.",
  cancelled: "Cancelled. The bench time is free again.",
  alreadyCancelled: "This job was cancelled before.",
} as const;

/** Entries in the owner's own calendar. */
export const ICS_WORDS = {
  dueTitle: "Charger clutch: rebuild due",
  dueText: (shop: string, link: string, phone: string): string =>
    `Book bench time at ${shop}: ${link} or call ${phone}.`,
  jobTitle: (work: string, number: string): string => `${work}, job ${number}`,
  jobText: (postBy: string, link: string): string => `Post the unit by ${postBy}. Your job: ${link}`,
} as const;

/** Where the QR code leads whoever scans it. */
export const SCANNED = {
  title: (number: string): string => `Job ${number}`,
  owners: (phone: string): string => `Is this your job? Open the link that you kept, or call ${phone}.`,
  finder: (shop: string): string => `Found this parcel? It belongs with ${shop}. Please send it there.`,
  staff: "Shop: open the job",
} as const;
