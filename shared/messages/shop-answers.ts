import type { Answers, RememberedService } from "#shared/craft/vocabulary.ts";
import { NOT_SURE, optionWords } from "#shared/messages/option-words.ts";
import { TAG_LABELS } from "#shared/messages/tag-lines.ts";
import { roundTo } from "#shared/units/round-to.ts";

/** A line of the job's page: what was asked, what was said. */
export type AnswerLine = { readonly label: string; readonly said: string };

/** The owner's answers as the bench reads them, each unknown named as such. */
export function answerLines(answers: Answers): readonly AnswerLine[] {
  const { mods } = answers;
  return [
    { label: TAG_LABELS.symptoms, said: symptomsSaid(answers) },
    { label: TAG_LABELS.unitFamily, said: optionWords("unitFamily", answers.unitFamily) },
    { label: TAG_LABELS.builtYear, said: orNotSure(answers.builtYear) },
    { label: TAG_LABELS.engineHours, said: orNotSure(answers.engineHours, " h") },
    { label: TAG_LABELS.riding, said: optionWords("riding", answers.riding) },
    { label: TAG_LABELS.engineModified, said: yesNo(mods.engine) },
    { label: TAG_LABELS.chargerModified, said: yesNo(mods.charger) },
    ...(mods.charger === true ? [{ label: TAG_LABELS.boost, said: boostSaid(mods.boostPsi) }] : []),
    { label: TAG_LABELS.changedSinceSlip, said: yesNo(mods.changedSinceSlip) },
    { label: TAG_LABELS.lastRebuild, said: serviceSaid(answers.lastRebuild) },
    { label: TAG_LABELS.lastSlipSet, said: serviceSaid(answers.lastSlipSet) },
    { label: TAG_LABELS.washers, said: optionWords("washers", answers.washers) },
  ];
}

function symptomsSaid({ symptoms, notLooked }: Answers): string {
  const noticed = symptoms.map((symptom) => optionWords("symptoms", symptom));
  const oil = notLooked ? ["Oil not looked at"] : [];
  return [...(noticed.length > 0 ? noticed : ["Nothing"]), ...oil].join("; ");
}

function serviceSaid({ when, date, engineHours, slipLeftAt }: RememberedService): string {
  if (when === "unknown") return NOT_SURE;
  if (when === "never") return "Never";
  const left = slipLeftAt === null ? [] : [`slip left at ${slipLeftAt} lbf·ft`];
  return [date ?? "date not sure", engineHours === null ? "hours not sure" : `at ${engineHours} h`, ...left].join(", ");
}

const orNotSure = (value: number | null, unit = ""): string => (value === null ? NOT_SURE : `${value}${unit}`);
const boostSaid = (psi: number | null): string => orNotSure(psi === null ? null : roundTo(psi, 2), " psi");
const yesNo = (answer: boolean | null): string =>
  answer === null ? NOT_SURE : optionWords("engineModified", answer ? "yes" : "no");
