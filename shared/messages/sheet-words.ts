import type { InspectedPart, PartCondition, SheetStepId } from "#shared/job/sheet-entry.ts";
import type { SignalWord } from "#shared/messages/cautions.ts";
import type { TorqueTool } from "#shared/slip/torque-tool.ts";

type StepWords = {
  readonly title: string;
  /** What to do, in order. */
  readonly says: readonly string[];
  readonly cautions: readonly { readonly signal: SignalWord; readonly text: string }[];
};

const SPINS = {
  signal: "WARNING",
  text: "The shaft may let go with a jerk. Clamp the unit to its plate, and keep fingers and sleeves off gear and impeller.",
} as const;
/** On any unit that is or may be a set-nut unit. */
const NEVER_HOME = {
  signal: "NOTICE",
  text: "On a set-nut unit the set nut stops part-way. Tightened home it locks the gear solid, and gear or shaft breaks.",
} as const;

/** What each step of the bench sheet says. */
export const STEP_WORDS: Readonly<Record<SheetStepId, StepWords>> = {
  "as-found-slip": {
    title: "Slip as found",
    says: [
      "Before anything is loosened, mount the unit on the fixture and hold the gear.",
      "Turn the shaft the way it works until the gear slips. Read the torque while it slips steadily.",
      "The first jerk is the breakaway. Note it apart.",
    ],
    cautions: [SPINS],
  },
  inspect: {
    title: "Inspect",
    says: [
      "Judge each part: good, worn or broken. Add a note where a word helps.",
      "Count what is missing as broken: it may lie in the engine.",
    ],
    cautions: [
      {
        signal: "CAUTION",
        text: "Broken gears and washers have sharp edges. Wear gloves, and eye protection when you blow parts clean.",
      },
    ],
  },
  "needles-out": {
    title: "Needle bearings out",
    says: ["Take the gear off over a tray.", "Count every needle bearing that comes out."],
    cautions: [],
  },
  "needles-in": {
    title: "Needle bearings in",
    says: ["Count each needle bearing in.", "Oil them and spin the gear by hand."],
    cautions: [{ signal: "NOTICE", text: "One needle bearing left out or dropped can wreck the engine." }],
  },
  "spring-washers": {
    title: "Washers and spring washers",
    says: [
      "Fit friction washers, collar and spring washers.",
      "Look at each spring washer: the cone must face the way the stack calls for.",
      "Set the nut on dry.",
    ],
    cautions: [{ signal: "NOTICE", text: "A spring washer the wrong way round changes the slip and may let go." }],
  },
  "plate-recess": {
    title: "Plate recess to the drain-back",
    says: ["Line up the recess of the retaining plate with the drain-back."],
    cautions: [{ signal: "NOTICE", text: "Out of line, the oiling fails and the bearings with it." }],
  },
  screws: {
    title: "Retaining plate screws",
    says: ["Tighten the screws in pattern, to the torque that the maker's manual gives."],
    cautions: [],
  },
  impeller: {
    title: "Impeller and housing",
    says: [
      "Where the fit is close, heat the impeller just enough to slide.",
      "Fit the housing. Turn the shaft and listen for a rub.",
    ],
    cautions: [
      {
        signal: "WARNING",
        text: "A heated impeller burns skin and lights fuel and oil. Clean it first, wear heat gloves, keep flames away.",
      },
    ],
  },
  shims: {
    title: "Shims until the slip is right",
    says: ["Fit shims, tighten as the maker's manual says, and read the slip.", "Write down every try."],
    cautions: [NEVER_HOME, SPINS],
  },
  "slip-before-lock": {
    title: "Slip before the lock nut",
    says: [
      "Turn the set nut a little, stop, and read the slip.",
      "Write down every try: the next angle follows from two.",
    ],
    cautions: [NEVER_HOME, SPINS],
  },
  "lock-nut": {
    title: "Lock nut",
    says: ["Put on thread locker and tighten the lock nut, with the set nut held still."],
    cautions: [
      NEVER_HOME,
      { signal: "CAUTION", text: "Thread locker irritates skin and eyes. Wear gloves and air the room." },
    ],
  },
  "final-slip": {
    title: "Final slip",
    says: [
      "Let the slip settle by the turns your shop uses, oiled as assembled.",
      "Read it at least three times with a digital wrench, while the gear slips steadily.",
      "Note the breakaway apart.",
    ],
    cautions: [SPINS],
  },
  "turn-by-hand": {
    title: "Turn by hand",
    says: ["Turn the shaft by hand, all the way round. Feel for a rub and look at the impeller."],
    cautions: [],
  },
};

export const PART_WORDS: Readonly<Record<InspectedPart, string>> = {
  "friction-washers": "Friction washers",
  "spring-washers": "Spring washers",
  "needle-bearings": "Needle bearings",
  "drive-gear": "Drive gear",
  shaft: "Shaft",
  "ball-bearings": "Ball bearings",
  seals: "Seals",
  "retaining-plate": "Retaining plate",
  housing: "Housing",
  impeller: "Impeller",
};

export const CONDITION_WORDS: Readonly<Record<PartCondition, string>> = {
  good: "Good",
  worn: "Worn",
  broken: "Broken or missing",
};

export const TOOL_WORDS: Readonly<Record<TorqueTool["kind"], string>> = {
  electronic: "Digital",
  click: "Click",
  beam: "Beam",
  dial: "Dial",
};

/** How a place was come to. */
export const REACHED_WORDS = { tightened: "Tightened to it", backedOff: "Backed off to it" } as const;
