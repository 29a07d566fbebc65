import type { RememberedService } from "#shared/craft/vocabulary.ts";
import type { Draft, QuestionId } from "#shared/intake/draft.ts";
import { QUESTIONS } from "#shared/intake/questions.ts";
import { NOT_LOOKED, NOT_SURE, NOTHING_NOTICED, optionWords } from "#shared/messages/option-words.ts";

/** One printed line of the job tag: touching it changes the answer. */
export type TagLine = { readonly id: QuestionId; readonly label: string; readonly value: string };

export const TAG_LABELS: Readonly<Record<QuestionId, string>> = {
  symptoms: "Noticed",
  unitFamily: "Clutch",
  builtYear: "Built",
  engineHours: "Hours now",
  riding: "Ridden",
  engineModified: "Engine modified",
  chargerModified: "Charger modified",
  boost: "Peak boost",
  changedSinceSlip: "Changed since slip set",
  lastRebuild: "Last rebuild",
  lastSlipSet: "Slip set",
  washers: "Washers",
  washersAgain: "Asked again",
};

/** The answers so far, in the order of the conversation. */
export const tagLines = (draft: Draft): readonly TagLine[] =>
  QUESTIONS.filter(({ id }) => draft[id] !== undefined).map(({ id }) => ({
    id,
    label: TAG_LABELS[id],
    value: textOf(id, draft),
  }));

function textOf(id: QuestionId, draft: Draft): string {
  switch (id) {
    case "symptoms":
      return symptomsText(draft.symptoms);
    case "builtYear":
      return draft.builtYear == null ? NOT_SURE : String(draft.builtYear);
    case "engineHours":
      return draft.engineHours == null ? NOT_SURE : `${draft.engineHours} h`;
    case "boost":
      return draft.boost == null ? NOT_SURE : `${draft.boost.value} ${draft.boost.unit}`;
    case "lastRebuild":
    case "lastSlipSet":
      return serviceText(draft[id]);
    case "unitFamily":
    case "riding":
    case "engineModified":
    case "chargerModified":
    case "changedSinceSlip":
    case "washers":
    case "washersAgain":
      return optionWords(id, draft[id] ?? "");
  }
}

function symptomsText(symptoms: Draft["symptoms"]): string {
  const noticed = (symptoms?.noticed ?? []).map((symptom) => optionWords("symptoms", symptom));
  if (symptoms?.notLooked) noticed.push(NOT_LOOKED);
  return noticed.length > 0 ? noticed.join(", ") : NOTHING_NOTICED;
}

function serviceText(service: RememberedService | undefined): string {
  if (service === undefined || service.when === "unknown") return NOT_SURE;
  if (service.when === "never") return "Never";
  const hours = service.engineHours === null ? null : `at ${service.engineHours} h`;
  const leftAt = service.slipLeftAt === null ? null : `left at ${service.slipLeftAt} lbf·ft`;
  const known = [service.date, hours, leftAt].filter((it) => it !== null);
  return known.length > 0 ? known.join(", ") : "Done, not sure when";
}
