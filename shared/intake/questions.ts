import { ceramicIsPlausible } from "#shared/craft/ceramic.ts";
import { RIDING, SYMPTOMS, type Symptom, UNIT_FAMILIES, WASHERS } from "#shared/craft/vocabulary.ts";
import { answersFrom, type Draft, type QuestionId } from "#shared/intake/draft.ts";
import { PRESSURE_UNITS } from "#shared/units/pressure.ts";

/** How an answer is given, and so which form is shown and how it is read. */
export type AnswerKind =
  | { readonly kind: "several"; readonly options: readonly Symptom[] }
  | { readonly kind: "one"; readonly options: readonly string[] }
  | { readonly kind: "number"; readonly least: number; readonly most: number; readonly whole: boolean }
  | { readonly kind: "measure"; readonly units: readonly string[]; readonly leastPsi: number; readonly mostPsi: number }
  | { readonly kind: "service" };

/** What the conversation has to know besides the answers. */
export type Circumstances = {
  /** Today in the shop's zone, ISO 8601. */
  readonly onDate: string;
  /** Last year built in which ceramic washers are plausible: a setting of the shop. */
  readonly ceramicUntilYear: number;
};

export type Question = {
  readonly id: QuestionId;
  readonly answer: AnswerKind;
  /** Asked only where the answer can still matter: read from the answers before it in the list. */
  readonly applies: (before: Draft, now: Circumstances) => boolean;
};

const always = () => true;
const YES_NO: AnswerKind = { kind: "one", options: ["yes", "no", "unknown"] };

/** The conversation, in the order in which it is asked. */
export const QUESTIONS: readonly Question[] = [
  { id: "symptoms", answer: { kind: "several", options: SYMPTOMS }, applies: always },
  { id: "unitFamily", answer: { kind: "one", options: UNIT_FAMILIES }, applies: always },
  { id: "builtYear", answer: { kind: "number", least: 1985, most: 2100, whole: true }, applies: always },
  { id: "engineHours", answer: { kind: "number", least: 0, most: 20_000, whole: false }, applies: always },
  { id: "riding", answer: { kind: "one", options: RIDING }, applies: always },
  { id: "engineModified", answer: YES_NO, applies: always },
  { id: "chargerModified", answer: YES_NO, applies: always },
  {
    id: "boost",
    answer: { kind: "measure", units: PRESSURE_UNITS, leastPsi: 1, mostPsi: 60 },
    applies: (before) => before.chargerModified === "yes",
  },
  { id: "changedSinceSlip", answer: YES_NO, applies: changeStillMatters },
  { id: "lastRebuild", answer: { kind: "service" }, applies: always },
  { id: "lastSlipSet", answer: { kind: "service" }, applies: slipMayHaveBeenSetLater },
  { id: "washers", answer: { kind: "one", options: WASHERS }, applies: always },
  { id: "washersAgain", answer: { kind: "one", options: WASHERS }, applies: ceramicIsUnlikely },
];

export const questionOf = (id: string): Question | undefined => QUESTIONS.find((question) => question.id === id);

const hasSymptoms = ({ symptoms }: Draft): boolean => (symptoms?.noticed.length ?? 0) > 0;

/** A change since the slip was set asks for a slip check; every symptom asks for at least as much. */
function changeStillMatters(before: Draft): boolean {
  const maybeModified = before.engineModified !== "no" || before.chargerModified !== "no";
  return maybeModified && !hasSymptoms(before);
}

/** Not where the rebuild, which sets the slip too, is so fresh that no riding can have come after it. */
function slipMayHaveBeenSetLater({ engineHours = null, lastRebuild }: Draft, { onDate }: Circumstances): boolean {
  if (engineHours === 0) return false;
  if (lastRebuild?.when !== "known") return true;
  const hoursTell = engineHours !== null && lastRebuild.engineHours !== null;
  return hoursTell ? engineHours !== lastRebuild.engineHours : lastRebuild.date !== onDate;
}

/** Ceramic named where it is not plausible. */
function ceramicIsUnlikely(before: Draft, { ceramicUntilYear }: Circumstances): boolean {
  return before.washers === "ceramic" && !ceramicIsPlausible(answersFrom(before), ceramicUntilYear);
}
