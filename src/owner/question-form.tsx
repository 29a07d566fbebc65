import type { Child } from "hono/jsx";
import { unreachable } from "#shared/basics/unreachable.ts";
import type { UnitFamily } from "#shared/craft/vocabulary.ts";
import type { FilledFields } from "#shared/intake/form-fields.ts";
import type { Question } from "#shared/intake/questions.ts";
import { FIELD, type FieldProblem } from "#shared/intake/read-answer.ts";
import { NOT_LOOKED, NOT_SURE, NOTHING_NOTICED, optionWords } from "#shared/messages/option-words.ts";
import { problemWords } from "#shared/messages/problem-words.ts";
import { BUILD_WORDS, FORM_WORDS, QUESTION_WORDS } from "#shared/messages/question-words.ts";
import { ClutchDrawing } from "#src/owner/clutch-drawing.tsx";

type FormProps = { readonly question: Question; readonly filled: FilledFields; readonly problem?: FieldProblem | null };

/** One question as a plain form: it works by itself, and the browser's script takes it over where there is one. */
export function QuestionForm({ question, filled, problem = null }: FormProps) {
  const { asks, help } = QUESTION_WORDS[question.id];
  const fields = { question, filled, problem };
  return (
    <form method="post" action={`/intake/${question.id}`} data-question={question.id} novalidate>
      <h1 tabindex={-1} id="asks">
        {asks}
      </h1>
      <p id="help">{help}</p>
      {!isTyped(problem) && <Problem problem={problem} />}
      <FieldsOf {...fields} />
    </form>
  );
}

const TYPED: readonly string[] = [FIELD.value, FIELD.date, FIELD.hours, FIELD.leftAt];
const isTyped = (problem: FieldProblem | null): boolean => problem !== null && TYPED.includes(problem.field);

/** Above the typed field that it is about, so that both are in sight on a phone; else above all choices. */
const Problem = ({ problem }: { readonly problem: FieldProblem | null }) => (
  <p class="problem" id="problem" role="alert" hidden={problem === null}>
    {problem === null ? "" : problemWords(problem)}
  </p>
);

type FieldsProps = {
  readonly question: Question;
  readonly filled: FilledFields;
  readonly problem: FieldProblem | null;
};

function FieldsOf({ question, filled, problem }: FieldsProps) {
  const kind = question.answer;
  switch (kind.kind) {
    case "several":
      return <Several options={kind.options} filled={filled} />;
    case "one":
      return <One id={question.id} options={kind.options} filled={filled} />;
    case "number":
      return <Amount question={question} filled={filled} problem={problem} />;
    case "measure":
      return <Measure units={kind.units} filled={filled} problem={problem} />;
    case "service":
      return <Service filled={filled} problem={problem} />;
    default:
      return unreachable(kind);
  }
}

const has = (filled: FilledFields, name: string, value: string): boolean => [filled[name] ?? []].flat().includes(value);
const text = (filled: FilledFields, name: string): string => [filled[name] ?? ""].flat()[0] ?? "";

function Group({ children }: { readonly children: Child }) {
  return (
    <fieldset aria-labelledby="asks" aria-describedby="help">
      {children}
    </fieldset>
  );
}

type TickProps = {
  readonly type: "radio" | "checkbox";
  readonly name: string;
  readonly value: string;
  readonly filled: FilledFields;
  readonly children: Child;
};

const Tick = ({ type, name, value, filled, children }: TickProps) => (
  <label class="choice">
    <input type={type} name={name} value={value} checked={has(filled, name, value)} />
    {children}
  </label>
);

function Several({ options, filled }: { readonly options: readonly string[]; readonly filled: FilledFields }) {
  return (
    <>
      <Group>
        {options.map((option) => (
          <Tick type="checkbox" name={FIELD.choice} value={option} filled={filled}>
            {optionWords("symptoms", option)}
          </Tick>
        ))}
        <Tick type="checkbox" name={FIELD.notLooked} value="yes" filled={filled}>
          {NOT_LOOKED}
        </Tick>
        <Tick type="checkbox" name={FIELD.nothing} value="yes" filled={filled}>
          {NOTHING_NOTICED}
        </Tick>
      </Group>
      <Next />
    </>
  );
}

type OneProps = { readonly id: Question["id"]; readonly options: readonly string[]; readonly filled: FilledFields };

function One({ id, options, filled }: OneProps) {
  return (
    <>
      <Group>
        {options.map((option) => (
          <Tick type="radio" name={FIELD.choice} value={option} filled={filled}>
            {optionWords(id, option)}
            {id === "unitFamily" && option !== "unknown" && (
              <ClutchDrawing family={option as UnitFamily} label={BUILD_WORDS[option as "set-nut"]} nutEnd />
            )}
          </Tick>
        ))}
      </Group>
      <Next />
    </>
  );
}

const Next = () => (
  <p class="actions">
    <button type="submit">{FORM_WORDS.next}</button>
  </p>
);

const NextOrNotSure = () => (
  <p class="actions">
    <button type="submit">{FORM_WORDS.next}</button>
    <button type="submit" class="quiet" name={FIELD.notSure} value="yes">
      {NOT_SURE}
    </button>
  </p>
);

type EntryProps = {
  readonly label: string;
  readonly name: string;
  readonly filled: FilledFields;
  readonly problem: FieldProblem | null;
  readonly type?: "date" | "text";
  readonly inputmode?: "decimal" | "numeric";
};

/** A single typed field; wrong ones are marked and point at what is wrong. */
const Entry = ({ label, name, filled, problem, type = "text", inputmode = "decimal" }: EntryProps) => (
  <>
    {problem?.field === name && <Problem problem={problem} />}
    <label class="field">
      <span>{label}</span>
      <input
        type={type}
        name={name}
        value={text(filled, name)}
        inputmode={type === "text" ? inputmode : undefined}
        autocomplete="off"
        aria-describedby="help problem"
        aria-invalid={problem?.field === name ? "true" : undefined}
      />
    </label>
  </>
);

function Amount({ question, filled, problem }: FieldsProps) {
  const isYear = question.id === "builtYear";
  return (
    <>
      <div class="short">
        <Entry
          label={isYear ? FORM_WORDS.year : FORM_WORDS.engineHours}
          name={FIELD.value}
          filled={filled}
          problem={problem}
          inputmode={isYear ? "numeric" : "decimal"}
        />
      </div>
      <NextOrNotSure />
    </>
  );
}

type MeasureProps = {
  readonly units: readonly string[];
  readonly filled: FilledFields;
  readonly problem: FieldProblem | null;
};

function Measure({ units, filled, problem }: MeasureProps) {
  return (
    <>
      <div class="pair short">
        <Entry label={FORM_WORDS.value} name={FIELD.value} filled={filled} problem={problem} />
        <label class="field">
          <span>{FORM_WORDS.unit}</span>
          <select name={FIELD.unit}>
            {units.map((unit) => (
              <option value={unit} selected={text(filled, FIELD.unit) === unit}>
                {unit}
              </option>
            ))}
          </select>
        </label>
      </div>
      <NextOrNotSure />
    </>
  );
}

function Service({ filled, problem }: { readonly filled: FilledFields; readonly problem: FieldProblem | null }) {
  const entry = { filled, problem };
  return (
    <>
      <Group>
        <Tick type="radio" name={FIELD.when} value="known" filled={filled}>
          {FORM_WORDS.known}
        </Tick>
        <div class="known pair short">
          <Entry label={FORM_WORDS.date} name={FIELD.date} type="date" {...entry} />
          <Entry label={FORM_WORDS.hours} name={FIELD.hours} {...entry} />
          <Entry label={FORM_WORDS.leftAt} name={FIELD.leftAt} {...entry} />
        </div>
        <Tick type="radio" name={FIELD.when} value="never" filled={filled}>
          {FORM_WORDS.never}
        </Tick>
        <Tick type="radio" name={FIELD.when} value="unknown" filled={filled}>
          {NOT_SURE}
        </Tick>
      </Group>
      <Next />
    </>
  );
}
