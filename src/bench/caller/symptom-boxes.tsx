import type { Symptom } from "#shared/craft/vocabulary.ts";
import type { Question } from "#shared/intake/questions.ts";
import { FIELD, type Fields } from "#shared/intake/read-answer.ts";
import { NOT_LOOKED, NOTHING_NOTICED, optionWords } from "#shared/messages/option-words.ts";
import { QUESTION_WORDS } from "#shared/messages/question-words.ts";
import { CALLER } from "#shared/messages/shop-caller-words.ts";
import { fieldName } from "#src/bench/caller/caller-fields.ts";

type BoxesProps = {
  readonly question: Question;
  readonly options: readonly Symptom[];
  readonly typed: Fields;
  readonly isWrong: boolean;
};

/** What was noticed: the one question that cannot be left empty, since an empty one might only be forgotten. */
export function SymptomBoxes({ question: { id }, options, typed, isWrong }: BoxesProps) {
  const boxes: readonly (readonly [field: string, value: string, words: string])[] = [
    ...options.map((option) => [FIELD.choice, option, optionWords(id, option)] as const),
    [FIELD.notLooked, "yes", NOT_LOOKED],
    [FIELD.nothing, "yes", NOTHING_NOTICED],
  ];
  const problemId = `${id}.problem`;
  return (
    <fieldset aria-describedby={isWrong ? problemId : undefined}>
      <legend>
        <strong>{QUESTION_WORDS[id].asks}</strong>
      </legend>
      <p class="faint">{QUESTION_WORDS[id].help}</p>
      {isWrong && (
        <p class="problem" id={problemId}>
          {CALLER.symptomsNeeded}
        </p>
      )}
      {boxes.map(([field, value, words], index) => (
        <label class="choice">
          <input
            type="checkbox"
            id={index === 0 ? fieldName(id, FIELD.choice) : undefined}
            name={fieldName(id, field)}
            value={value}
            checked={typed[fieldName(id, field)]?.includes(value) ?? false}
          />
          {words}
        </label>
      ))}
    </fieldset>
  );
}
