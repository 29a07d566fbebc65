import type { Child } from "hono/jsx";

/** What ties a control to its label, its hint and what is wrong with it. */
export type ControlLinks = {
  readonly id: string;
  readonly name: string;
  readonly "aria-describedby": string | undefined;
  readonly "aria-invalid": "true" | undefined;
};

type FieldProps = {
  readonly name: string;
  readonly label: string;
  readonly hint?: string | undefined;
  readonly problem?: string | undefined;
  /** A narrow one, for a few digits. */
  readonly short?: boolean;
  readonly control: (links: ControlLinks) => Child;
};

/** One field of a form: label, hint and problem above its control. */
export function LabelledField({ name, label, hint, problem, short, control }: FieldProps) {
  const hintId = hint === undefined ? [] : [`${name}.hint`];
  const problemId = problem === undefined ? [] : [`${name}.problem`];
  const described = [...hintId, ...problemId].join(" ");
  return (
    <div class={short ? "field short" : "field"}>
      <span>
        <label for={name}>{label}</label>
      </span>
      {hint !== undefined && (
        <div class="faint" id={`${name}.hint`}>
          {hint}
        </div>
      )}
      {problem !== undefined && (
        <p class="problem" id={`${name}.problem`}>
          {problem}
        </p>
      )}
      {control({
        id: name,
        name,
        "aria-describedby": described === "" ? undefined : described,
        "aria-invalid": problem === undefined ? undefined : "true",
      })}
    </div>
  );
}
