import type { Child } from "hono/jsx";
import type { SheetStepId } from "#shared/job/sheet-entry.ts";
import type { FormFields } from "#shared/job/sheet-fields.ts";

/** One step's form as it stands: what is in its fields, and what is wrong with them. */
export type StepForm = {
  readonly step: SheetStepId;
  readonly fields: FormFields;
  /** What is accepted instead, by field. */
  readonly problems: Readonly<Record<string, string>>;
};

export const typedIn = ({ fields }: StepForm, name: string, place = 0): string => fields[name]?.[place] ?? "";

/** All steps are on one page, so a field's id names its step. */
export const fieldId = (step: SheetStepId, name: string, place = 0): string =>
  place === 0 ? `${step}.${name}` : `${step}.${name}.${place}`;

type FieldProps = {
  readonly form: StepForm;
  readonly name: string;
  readonly label: string;
  readonly hint?: string | undefined;
  /** Which of several fields of the same name. */
  readonly place?: number;
};

/** What a control of the sheet carries. */
type Links = {
  readonly id: string;
  readonly name: string;
  readonly "aria-describedby": string | undefined;
  readonly "aria-invalid": "true" | undefined;
};

/** A label, its hint and what is wrong above one control. */
export function StepField({
  form,
  name,
  label,
  hint,
  place = 0,
  control,
}: FieldProps & { control: (links: Links) => Child }) {
  const id = fieldId(form.step, name, place);
  const problem = form.problems[place === 0 ? name : `${name}.${place}`];
  const described = [
    ...(hint === undefined ? [] : [`${id}.hint`]),
    ...(problem === undefined ? [] : [`${id}.problem`]),
  ];
  return (
    <div class="field">
      <label for={id}>{label}</label>
      {hint !== undefined && (
        <div class="faint" id={`${id}.hint`}>
          {hint}
        </div>
      )}
      {problem !== undefined && (
        <p class="problem" id={`${id}.problem`}>
          {problem}
        </p>
      )}
      {control({
        id,
        name,
        "aria-describedby": described.length === 0 ? undefined : described.join(" "),
        "aria-invalid": problem === undefined ? undefined : "true",
      })}
    </div>
  );
}

/** A number typed with gloves on: the script brings big keys for it. */
export const NumberField = (props: FieldProps) => (
  <StepField
    {...props}
    control={(links) => (
      <input
        {...links}
        type="text"
        inputmode="decimal"
        autocomplete="off"
        data-number
        value={typedIn(props.form, props.name, props.place)}
      />
    )}
  />
);

export const LineField = (props: FieldProps) => (
  <StepField
    {...props}
    control={(links) => (
      <input
        {...links}
        type="text"
        autocomplete="off"
        autocapitalize="characters"
        spellcheck={false}
        maxlength={60}
        value={typedIn(props.form, props.name, props.place)}
      />
    )}
  />
);

export const TextField = (props: FieldProps) => (
  <StepField
    {...props}
    control={(links) => (
      <textarea {...links} rows={2} maxlength={500}>
        {typedIn(props.form, props.name, props.place)}
      </textarea>
    )}
  />
);

type Option = readonly [value: string, words: string];

export const PickField = ({ options, ...props }: FieldProps & { readonly options: readonly Option[] }) => (
  <StepField
    {...props}
    control={(links) => (
      <select {...links}>
        {options.map(([value, words]) => (
          <option value={value} selected={value === typedIn(props.form, props.name, props.place)}>
            {words}
          </option>
        ))}
      </select>
    )}
  />
);
