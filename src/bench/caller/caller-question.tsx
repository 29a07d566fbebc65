import { unreachable } from "#shared/basics/unreachable.ts";
import type { Question } from "#shared/intake/questions.ts";
import { FIELD, type Fields } from "#shared/intake/read-answer.ts";
import { optionWords } from "#shared/messages/option-words.ts";
import { problemWords } from "#shared/messages/problem-words.ts";
import { FORM_WORDS, QUESTION_WORDS } from "#shared/messages/question-words.ts";
import { CALLER } from "#shared/messages/shop-caller-words.ts";
import type { CallerProblem } from "#src/bench/caller/caller-answers.ts";
import { fieldName } from "#src/bench/caller/caller-fields.ts";
import { Group, type Option, Pick, Text } from "#src/bench/caller/caller-inputs.tsx";
import { SymptomBoxes } from "#src/bench/caller/symptom-boxes.tsx";

type QuestionProps = {
  readonly question: Question;
  readonly typed: Fields;
  readonly problems: readonly CallerProblem[];
};

/** One question of the form that holds them all, put as an owner reads it. */
export function CallerQuestion({ question, typed, problems }: QuestionProps) {
  const { id, answer } = question;
  const { asks, help } = QUESTION_WORDS[id];
  const found = problems.find((it) => it.question.id === id)?.problem;
  const at = (field: string) => ({
    name: fieldName(id, field),
    value: typed[fieldName(id, field)]?.[0] ?? "",
    problem: found?.field === field ? problemWords(found) : undefined,
  });
  switch (answer.kind) {
    case "several":
      return <SymptomBoxes question={question} options={answer.options} typed={typed} isWrong={found !== undefined} />;
    case "one":
      return (
        <Pick
          {...at(FIELD.choice)}
          label={asks}
          hint={help}
          options={answer.options.map((option) => [option, optionWords(id, option)])}
        />
      );
    case "number":
      return <Text {...at(FIELD.value)} label={asks} hint={help} />;
    case "measure":
      return (
        <Group asks={asks} help={help}>
          <Text {...at(FIELD.value)} label={FORM_WORDS.value} />
          <Pick {...at(FIELD.unit)} label={FORM_WORDS.unit} options={answer.units.map((unit) => [unit, unit])} />
        </Group>
      );
    case "service":
      return (
        <Group asks={asks} help={help}>
          <Pick {...at(FIELD.when)} label={CALLER.known} options={SERVICE_OPTIONS} />
          <Text {...at(FIELD.date)} label={FORM_WORDS.date} type="date" />
          <Text {...at(FIELD.hours)} label={FORM_WORDS.hours} />
          <Text {...at(FIELD.leftAt)} label={FORM_WORDS.leftAt} />
        </Group>
      );
    default:
      return unreachable(answer);
  }
}

const SERVICE_OPTIONS: readonly Option[] = [
  ["known", FORM_WORDS.known],
  ["never", FORM_WORDS.never],
  ["unknown", FORM_WORDS.notSure],
];
