/** What is said beside a field of the contact form that is not accepted, to the owner or to the shop that fills it in. */
export const CONTACT_PROBLEMS = {
  name: "Write a name, of at most 100 characters.",
  phone: "Write a phone number, such as +1 202-555-0143, or give an email address instead.",
  email: "Write an email address, such as name@mail.example.",
  collect: "Choose how the unit goes back.",
  line1: "Write the street and number, of at most 100 characters, or choose that the unit is collected.",
  line2: "Write at most 100 characters.",
  region: "Write the town and state or region, of at most 60 characters.",
  postcode: "Write the postcode, of at most 16 characters.",
  country: "Write the country as two capital letters, such as US.",
  serial: "Write at most 40 characters.",
  goAhead: "Write an amount, such as 100, or leave it empty.",
} as const;

/** Words of the page on which an owner books. */
export const CONTACT_WORDS = {
  title: "Book the time we hold for you",
  mend: "Please mend this first. Nothing you wrote is lost.",
  oneOf: "Give a phone number or an email address. One is enough.",
  reach: "How we reach you",
  back: "Where the unit goes back to",
  ifYouLike: "If you like",
  labels: {
    name: "Your name",
    phone: "Phone",
    email: "Email",
    collect: "I collect the unit at the shop",
    line1: "Street and number",
    line2: "More of the address",
    region: "Town and state or region",
    postcode: "Postcode",
    country: "Country, two letters",
    serial: "Serial number of the unit, if you can read it",
    goAhead: "Go ahead without asking me, up to",
  },
  goAheadHelp: (currency: string): string =>
    `An amount in ${currency} on top of the price. Leave it empty to be asked.`,
  privacy: "We keep this for the job only. It is on no label, and nobody else gets it.",
  book: "Book it",
  longer: "Hold it longer",
  other: "Pick another time",
  pickAgain: "The time we held has gone. Pick another",
  holdEnded: "The time we held for you ran out. What you wrote is still here. Pick another time and book.",
  alreadyBooked: "This time is booked already. Nothing was booked twice. Open your job tag, or call us for a new link.",
  needsMoreTime: "Your answers now ask for more bench time than we held. Pick a time that is long enough.",
  notUrgent:
    "Your answers no longer ask for an urgent slot, and the unit could not be here by then. Pick another time.",
  taken: "Someone else just took that time. These are the nearest free ones.",
  tooMany: "You already hold as much time as one person may. Book or wait until it ends.",
  priceChanged: "The shop changed the price meanwhile. Look at the new price before you book.",
  answersAhead: "A date or a year in your answers is still to come. Please change that answer.",
} as const;
