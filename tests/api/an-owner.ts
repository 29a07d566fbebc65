const UNKNOWN_SERVICE = { when: "unknown", date: null, engineHours: null };

/** A standard set-nut unit, rebuilt 30 hours ago and ridden gently: nothing is due. */
export const someAnswers = (change: object = {}) => ({
  unitFamily: "set-nut",
  builtYear: 2026,
  engineHours: 50,
  riding: "easy",
  mods: { engine: false, charger: false, boostPsi: null, changedSinceSlip: false },
  lastRebuild: { when: "known", date: null, engineHours: 20 },
  lastSlipSet: { when: "never", date: null, engineHours: null },
  washers: "metal",
  symptoms: [],
  ...change,
});

export const nothingKnown = (change: object = {}) => ({
  unitFamily: "unknown",
  builtYear: null,
  engineHours: null,
  riding: "unknown",
  mods: { engine: null, charger: null, boostPsi: null, changedSinceSlip: null },
  lastRebuild: UNKNOWN_SERVICE,
  lastSlipSet: UNKNOWN_SERVICE,
  washers: "unknown",
  symptoms: [],
  ...change,
});

/** An owner of our invention; the number is one of those kept for fiction. */
export const someOwner = (change: object = {}) => ({
  contact: { name: "Wren Calloway", phone: "(202) 555-0143", email: "wren@shore.example" },
  returnTo: { lines: ["7 Heron Quay"], postcode: "00001", region: "Ottersby", country: "US" },
  ...change,
});
