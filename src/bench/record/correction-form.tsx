import type { Service } from "#shared/job/record-schema.ts";
import { SHOP_RECORD as WORDS } from "#shared/messages/shop-record-words.ts";
import { LabelledField } from "#src/bench/labelled-field.tsx";
import { ProblemSummary } from "#src/bench/problem-summary.tsx";
import {
  type CorrectionFields,
  type CorrectionProblems,
  correctableParts,
  partField,
} from "#src/bench/record/correction-fields.ts";

type FormProps = {
  readonly number: string;
  readonly hash: string;
  readonly service: Service;
  readonly fields: CorrectionFields;
  readonly problems: CorrectionProblems;
};
type OneField = { readonly name: string; readonly label: string; readonly hint?: string };

/** What a manager may put right. Readings that were never taken have no field. */
export function CorrectionForm({ number, hash, service, fields, problems }: FormProps) {
  const all = fieldsOf(service);
  const said = { fields, problems };
  return (
    <section class="screen">
      <h2>{WORDS.correctTitle}</h2>
      <p>{WORDS.correctHow}</p>
      <ProblemSummary
        title={WORDS.problems}
        says={WORDS.problemsSay}
        problems={all
          .filter(({ name }) => problems[name] !== undefined)
          .map(({ name, label }) => ({ field: name, label }))}
      />
      <form method="post" action={`/shop/jobs/${number}/record/correct`}>
        <input type="hidden" name="ifHash" value={hash} />
        {all.filter(isPart).length === 0 ? null : (
          <details open={all.some((it) => isPart(it) && problems[it.name] !== undefined)}>
            <summary>{WORDS.parts}</summary>
            {all.filter(isPart).map((field) => (
              <TextField {...field} {...said} short={true} />
            ))}
          </details>
        )}
        {all
          .filter((field) => !isPart(field))
          .map((field) => (
            <TextField {...field} {...said} />
          ))}
        <button type="submit">{WORDS.correct}</button>
      </form>
    </section>
  );
}

const isPart = ({ name }: OneField): boolean => name.startsWith(partField(""));

const fieldsOf = (service: Service): readonly OneField[] => [
  ...correctableParts(service).map(({ part, name }) => ({ name: partField(part), label: name })),
  { name: "engineHours", label: WORDS.hours, hint: WORDS.hoursHint },
  { name: "serial", label: WORDS.serial, hint: WORDS.serialHint },
  ...(service.found.slip === null ? [] : [{ name: "found", label: WORDS.found, hint: WORDS.readingsHint }]),
  ...(service.left.slip === null ? [] : [{ name: "left", label: WORDS.left, hint: WORDS.readingsHint }]),
  { name: "note", label: WORDS.note },
  { name: "why", label: WORDS.reason, hint: WORDS.reasonHint },
];

type TextFieldProps = OneField & Pick<FormProps, "fields" | "problems"> & { readonly short?: boolean };

const TextField = ({ name, label, hint, fields, problems, short = false }: TextFieldProps) => (
  <LabelledField
    name={name}
    label={label}
    hint={hint}
    problem={problems[name]}
    short={short}
    control={(links) => (
      <input
        {...links}
        type="text"
        inputmode={short ? "numeric" : undefined}
        value={fields[name] ?? ""}
        autocomplete="off"
      />
    )}
  />
);
