import type { Child } from "hono/jsx";
import { LabelledField } from "#src/bench/labelled-field.tsx";

/** A field of the form as it stands: what is in it, and what is wrong with it. */
type Standing = {
  readonly name: string;
  readonly value: string;
  readonly problem: string | undefined;
  readonly label: string;
  readonly hint?: string;
};

export type Option = readonly [value: string, words: string];

/** What stands for "not sure" in every list that has it: chosen until something else is. */
const NOT_SURE = "unknown";

export const Pick = ({ value, options, ...field }: Standing & { readonly options: readonly Option[] }) => (
  <LabelledField
    {...field}
    control={(links) => (
      <select {...links}>
        {options.map(([option, words]) => (
          <option value={option} selected={option === (value === "" ? NOT_SURE : value)}>
            {words}
          </option>
        ))}
      </select>
    )}
  />
);

export const Text = ({ value, type = "text", ...field }: Standing & { readonly type?: "text" | "date" }) => (
  <LabelledField
    {...field}
    short
    control={(links) => (
      <input
        type={type}
        value={value}
        inputmode={type === "text" ? "decimal" : undefined}
        autocomplete="off"
        {...links}
      />
    )}
  />
);

type GroupProps = { readonly asks: string; readonly help: string; readonly children?: Child };

/** Several fields that answer one question. */
export const Group = ({ asks, help, children }: GroupProps) => (
  <fieldset>
    <legend>
      <strong>{asks}</strong>
    </legend>
    <p class="faint">{help}</p>
    <div class="pair">{children}</div>
  </fieldset>
);
