/** What a demo owner posts to the JSON interface. All invented; the numbers and domains are reserved for fiction. */
export type DemoOwner = {
  readonly verdict: "slip-check" | "full-rebuild" | "stop-riding";
  readonly answers: object;
  readonly contact: { readonly name: string; readonly phone?: string; readonly email?: string };
  readonly returnTo: object;
};

const UNMODIFIED = { engine: false, charger: false, boostPsi: null, changedSinceSlip: false };
const NEVER = { when: "never", date: null, engineHours: null };
const UNKNOWN = { when: "unknown", date: null, engineHours: null };

const service = (date: string, engineHours: number) => ({ when: "known", date, engineHours });

const onTheLake = (line: string) => ({
  lines: [line, "Ottersby Landing"],
  postcode: "00000",
  region: "Ottersby Lake",
  country: "US",
});

/** Dates count back from the day of the start, so that the demo shop never grows old. */
export function demoOwners(daysAgo: (days: number) => string): readonly DemoOwner[] {
  const thisYear = Number(daysAgo(0).slice(0, 4));
  return [
    {
      verdict: "stop-riding",
      answers: {
        unitFamily: "shim-stack",
        builtYear: 2009,
        engineHours: 188,
        riding: "mixed",
        mods: UNMODIFIED,
        lastRebuild: UNKNOWN,
        lastSlipSet: UNKNOWN,
        washers: "unknown",
        symptoms: ["metal-in-oil", "sudden-boost-loss"],
      },
      contact: { name: "Odalys Fenwick", phone: "+1 202-555-0117" },
      returnTo: onTheLake("4 Reed Bank Lane"),
    },
    {
      verdict: "full-rebuild",
      answers: {
        unitFamily: "set-nut",
        builtYear: thisYear - 4,
        engineHours: 143,
        riding: "easy",
        mods: UNMODIFIED,
        lastRebuild: NEVER,
        lastSlipSet: NEVER,
        washers: "metal",
        symptoms: [],
      },
      contact: { name: "Bertil Quarrie", email: "bertil.quarrie@example.com" },
      returnTo: onTheLake("19 Boathouse Row"),
    },
    {
      verdict: "slip-check",
      answers: {
        unitFamily: "shim-stack",
        builtYear: thisYear - 6,
        engineHours: 236,
        riding: "hard",
        mods: UNMODIFIED,
        lastRebuild: service(daysAgo(400), 150),
        lastSlipSet: service(daysAgo(150), 178),
        washers: "metal",
        symptoms: [],
      },
      contact: { name: "Imke Sallow", phone: "+1 202-555-0142", email: "imke.sallow@example.com" },
      returnTo: { collect: true },
    },
    {
      verdict: "slip-check",
      answers: {
        unitFamily: "set-nut",
        builtYear: thisYear - 3,
        engineHours: 96,
        riding: "mixed",
        mods: { engine: false, charger: true, boostPsi: 16, changedSinceSlip: true },
        lastRebuild: service(daysAgo(210), 70),
        lastSlipSet: service(daysAgo(210), 70),
        washers: "metal",
        symptoms: ["limp-mode"],
      },
      contact: { name: "Tavish Orrin", phone: "+1 202-555-0168", email: "tavish.orrin@example.com" },
      returnTo: onTheLake("2 Heron Point"),
    },
  ];
}
