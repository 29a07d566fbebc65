import type { RememberedService } from "#shared/craft/vocabulary.ts";
import type { Draft } from "#shared/intake/draft.ts";
import type { Question } from "#shared/intake/questions.ts";
import { FIELD } from "#shared/intake/read-answer.ts";
import type { Pressure } from "#shared/units/pressure.ts";

/** How a form is filled to say an answer again: field by field, one value or several. */
export type FilledFields = Readonly<Record<string, string | readonly string[]>>;

/** What any form sends for a box that is ticked. */
const TICKED = "yes";

/**
 * The fields of a question's form, filled with the answer given before: what `readAnswer` reads, the other way round.
 * @example fieldsFor(questionOf("boost"), { value: 1.1, unit: "bar" }) // { value: "1.1", unit: "bar" }
 */
export function fieldsFor(question: Question, answer: NonNullable<unknown> | null): FilledFields {
  switch (question.answer.kind) {
    case "several":
      return severalFields(answer as NonNullable<Draft["symptoms"]>);
    case "one":
      return { [FIELD.choice]: answer as string };
    case "number":
      return answer === null ? notSure : { [FIELD.value]: String(answer as number) };
    case "measure":
      return answer === null ? notSure : measureFields(answer as Pressure);
    case "service":
      return serviceFields(answer as RememberedService);
  }
}

const notSure: FilledFields = { [FIELD.notSure]: TICKED };

function severalFields({ noticed, notLooked }: NonNullable<Draft["symptoms"]>): FilledFields {
  return {
    [FIELD.choice]: noticed,
    ...(notLooked ? { [FIELD.notLooked]: TICKED } : {}),
    ...(noticed.length === 0 && !notLooked ? { [FIELD.nothing]: TICKED } : {}),
  };
}

const measureFields = ({ value, unit }: Pressure): FilledFields => ({
  [FIELD.value]: String(value),
  [FIELD.unit]: unit,
});

/** What was left empty = not sure stays empty. */
function serviceFields({ when, date, engineHours, slipLeftAt }: RememberedService): FilledFields {
  return {
    [FIELD.when]: when,
    ...(date === null ? {} : { [FIELD.date]: date }),
    ...(engineHours === null ? {} : { [FIELD.hours]: String(engineHours) }),
    ...(slipLeftAt === null ? {} : { [FIELD.leftAt]: String(slipLeftAt) }),
  };
}
