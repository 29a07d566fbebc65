import { partsToInspect, type SheetStep } from "#shared/job/sheet-steps.ts";
import { SHEET } from "#shared/messages/sheet-page-words.ts";
import { InspectFields } from "#src/bench/sheet/inspect-fields.tsx";
import { SettingFields } from "#src/bench/sheet/setting-fields.tsx";
import type { SheetModel } from "#src/bench/sheet/sheet-model.ts";
import { SlipFields } from "#src/bench/sheet/slip-fields.tsx";
import { NumberField, type StepForm, TextField } from "#src/bench/sheet/step-field.tsx";

type StepBodyProps = { readonly model: SheetModel; readonly step: SheetStep; readonly form: StepForm };

/** The fields of a step, by its kind. */
export function StepBody({ model, step, form }: StepBodyProps) {
  switch (step.kind) {
    case "slip":
      return <SlipFields form={form} plan={model.plan} />;
    case "inspect":
      return <InspectFields model={model} form={form} parts={partsToInspect(model.case)} said={model.job.answers} />;
    case "count":
      return <CountFields form={form} due={needlesDue(model, step)} />;
    case "setting":
      return <SettingFields form={form} plan={model.plan} />;
    case "done":
      return <TextField form={form} name="note" label={SHEET.note} hint={SHEET.optional} />;
  }
}

const CountFields = ({ form, due }: { readonly form: StepForm; readonly due: number | null }) => (
  <>
    {due !== null && <p class="big">{SHEET.needlesDue(due)}</p>}
    <NumberField form={form} name="needles" label={SHEET.needles} />
    <TextField form={form} name="why" label={SHEET.why} hint={SHEET.whyCount} />
  </>
);

/** What went out is shown while it goes in again, unless the family's own number is known. */
function needlesDue({ case: it, view }: SheetModel, { id }: SheetStep): number | null {
  const out = view.sheet["needles-out"]?.entry;
  return it.needles ?? (id === "needles-in" && out?.kind === "count" ? out.needles : null);
}
