const EVENTS: Readonly<Record<string, string>> = {
  booked: "Booked",
  moved: "Moved to another time",
  cancelled: "Cancelled",
  "link-reissued": "New link made for the owner",
  "zone-law-moved": "Clock law changed: same time on the wall, new instant",
};

/** What happened to a job, as its history says it; the event's own name where it has no words. */
export const eventText = (what: string): string => EVENTS[what] ?? what;
