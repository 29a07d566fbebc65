import { readReadings, readTool } from "#shared/job/sheet-fields.ts";
import type { SheetPlan } from "#shared/job/sheet-plan.ts";
import { SHEET } from "#shared/messages/sheet-page-words.ts";
import { TOOL_WORDS } from "#shared/messages/sheet-words.ts";
import { FEWEST_READINGS, TOOL_KINDS } from "#shared/slip/torque-tool.ts";
import { DialFigure } from "#src/bench/sheet/dial-figure.tsx";
import { NumberField, PickField, type StepForm, TextField, typedIn } from "#src/bench/sheet/step-field.tsx";

type SlipFieldsProps = { readonly form: StepForm; readonly plan: SheetPlan };

/** Readings of the slip, with the dial that they move. */
export function SlipFields({ form, plan }: SlipFieldsProps) {
  const isFinal = form.step === "final-slip";
  const fewest = isFinal ? FEWEST_READINGS : 1;
  const places = Math.max(FEWEST_READINGS, (form.fields["readings"]?.length ?? 0) + 1);
  return (
    <>
      <DialFigure plan={plan} isFinal={isFinal} readings={readReadings(form.fields)} tool={readTool(form.fields)} />
      <fieldset>
        <legend>
          <strong>{SHEET.readings}</strong> <span class="faint">{SHEET.readingsHint(fewest)}</span>
        </legend>
        <div class="pair readings" data-readings>
          {Array.from({ length: places }, (_, place) => (
            <NumberField form={form} name="readings" place={place} label={SHEET.reading(place + 1)} />
          ))}
        </div>
      </fieldset>
      <NumberField form={form} name="breakaway" label={SHEET.breakaway} hint={SHEET.breakawayHint} />
      <ToolFields form={form} />
      {isFinal && <TextField form={form} name="why" label={SHEET.why} hint={SHEET.whySlip} />}
    </>
  );
}

/** The wrench: asked once, then remembered. */
export const ToolFields = ({ form }: { readonly form: StepForm }) => (
  <details class="tool" open={typedIn(form, "tool.accuracyPercent") === "" || hasProblem(form)}>
    <summary>
      {SHEET.tool}: <span data-tool-text>{toolText(form)}</span>
    </summary>
    <div class="pair">
      <PickField
        form={form}
        name="tool.kind"
        label={SHEET.toolKind}
        options={TOOL_KINDS.map((kind) => [kind, TOOL_WORDS[kind]])}
      />
      <NumberField form={form} name="tool.accuracyPercent" label={SHEET.toolAccuracy} />
      <NumberField form={form} name="tool.resolution" label={SHEET.toolResolution} />
      <NumberField form={form} name="tool.k" label={SHEET.toolK} hint={SHEET.toolKHint} />
    </div>
  </details>
);

const hasProblem = ({ problems }: StepForm): boolean => Object.keys(problems).some((name) => name.startsWith("tool."));

function toolText(form: StepForm): string {
  const tool = readTool(form.fields);
  return tool === null
    ? SHEET.toolUnknown
    : SHEET.toolText(TOOL_WORDS[tool.kind], tool.accuracyPercent, tool.resolution);
}
