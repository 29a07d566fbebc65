import type { QuestionId } from "#shared/intake/draft.ts";

export type QuestionWords = { readonly asks: string; readonly help: string };

/** How each question is put. */
export const QUESTION_WORDS: Readonly<Record<QuestionId, QuestionWords>> = {
  symptoms: {
    asks: "What have you noticed?",
    help: "Pick all that fit. Do not start the engine to find out.",
  },
  unitFamily: {
    asks: "How is the clutch built?",
    help: "Early units have thin shim washers behind the nut. Later ones have none: the set nut stops part-way.",
  },
  builtYear: {
    asks: "Which year was the unit built?",
    help: "The year of the craft will do.",
  },
  engineHours: {
    asks: "How many hours has the engine run?",
    help: "Read the hour meter. If it was replaced, add the hours of both.",
  },
  riding: {
    asks: "How is it ridden?",
    help: "Gently is cruising and towing. Hard is racing, jumping waves and long full throttle.",
  },
  engineModified: {
    asks: "Has the engine been modified?",
    help: "Other software, intake or exhaust than it left the factory with.",
  },
  chargerModified: {
    asks: "Has the supercharger been modified?",
    help: "Another impeller or another drive, for more boost.",
  },
  boost: {
    asks: "What is the peak boost?",
    help: "As the gauge shows at full throttle.",
  },
  changedSinceSlip: {
    asks: "Was this changed after the slip was last set?",
    help: "Slip is the torque at which the clutch lets the gear turn on its shaft.",
  },
  lastRebuild: {
    asks: "When was the unit last rebuilt?",
    help: "A rebuild puts in new washers and bearings. Leave empty what you do not know.",
  },
  lastSlipSet: {
    asks: "Has the slip been set since then?",
    help: "Only the slip, without a rebuild. If it was never rebuilt, count from new.",
  },
  washers: {
    asks: "Which friction washers does it have?",
    help: "Most owners do not know. That is fine.",
  },
  washersAgain: {
    asks: "Ceramic washers? Please check once more.",
    help: "Units like yours have metal washers as a rule. We believe what you say now.",
  },
};

/** What the drawings of the two builds show, for those who cannot see them. */
export const BUILD_WORDS = {
  "shim-stack": "Section of a shim stack: thin shim washers between the set nut and the spring washers.",
  "set-nut": "Section of a set nut unit: no shims, the set nut stands off the spring washers.",
} as const;

/** Beside the fields of the forms. */
export const FORM_WORDS = {
  next: "Next",
  notSure: "Not sure",
  never: "Never",
  known: "I know it, at least roughly",
  date: "Date",
  hours: "Engine hours then",
  leftAt: "Slip it was left at, lbf·ft",
  ifKnown: "if you know it",
  year: "Year",
  engineHours: "Engine hours",
  value: "Peak boost",
  unit: "Unit",
} as const;
