import { type InspectedPart, PART_CONDITIONS } from "#shared/job/sheet-entry.ts";
import { optionWords } from "#shared/messages/option-words.ts";
import { SHEET } from "#shared/messages/sheet-page-words.ts";
import { CONDITION_WORDS, PART_WORDS } from "#shared/messages/sheet-words.ts";
import type { Job } from "#shared/shop/booking.ts";
import type { SheetModel } from "#src/bench/sheet/sheet-model.ts";
import {
  fieldId,
  LineField,
  NumberField,
  PickField,
  type StepForm,
  TextField,
  typedIn,
} from "#src/bench/sheet/step-field.tsx";
import { StepPhotos } from "#src/bench/sheet/step-photos.tsx";

type InspectProps = {
  readonly model: SheetModel;
  readonly form: StepForm;
  readonly parts: readonly InspectedPart[];
  /** What the owner said, which the bench may know better. */
  readonly said: Job["answers"];
};

/** Each part judged by one touch, with room for a word. */
export const InspectFields = ({ model, form, parts, said }: InspectProps) => (
  <>
    {parts.map((part) => (
      <PartFields model={model} form={form} part={part} />
    ))}
    <fieldset>
      <legend>
        <strong>{SHEET.found}</strong>
      </legend>
      <div class="pair">
        <PickField
          form={form}
          name="unitFamily"
          label={SHEET.foundFamily}
          options={[
            ["", SHEET.asSaid(optionWords("unitFamily", said.unitFamily))],
            ["shim-stack", optionWords("unitFamily", "shim-stack")],
            ["set-nut", optionWords("unitFamily", "set-nut")],
          ]}
        />
        <NumberField form={form} name="boostPsi" label={SHEET.foundBoost} hint={SHEET.foundBoostHint} />
      </div>
      <LineField form={form} name="serial" label={SHEET.foundSerial} />
    </fieldset>
  </>
);

type PartProps = { readonly model: SheetModel; readonly form: StepForm; readonly part: InspectedPart };

function PartFields({ model, form, part }: PartProps) {
  const name = `parts.${part}.condition`;
  const problem = form.problems[name];
  return (
    <fieldset class="part" id={fieldId(form.step, name)}>
      <legend>
        <strong>{PART_WORDS[part]}</strong>
      </legend>
      {problem !== undefined && <p class="problem">{problem}</p>}
      <div class="judged">
        {PART_CONDITIONS.map((condition) => (
          <label class="choice">
            <input type="radio" name={name} value={condition} checked={typedIn(form, name) === condition} />
            {CONDITION_WORDS[condition]}
          </label>
        ))}
      </div>
      <details class="note-of-part" open={typedIn(form, `parts.${part}.note`) !== ""}>
        <summary>{SHEET.noteOn(PART_WORDS[part])}</summary>
        <TextField form={form} name={`parts.${part}.note`} label={SHEET.note} />
      </details>
      <StepPhotos model={model} step="inspect" part={part} />
    </fieldset>
  );
}
