import { BACKED_OFF, readTool, readTries } from "#shared/job/sheet-fields.ts";
import { adviceText, type SheetPlan, settingTarget } from "#shared/job/sheet-plan.ts";
import { SHEET } from "#shared/messages/sheet-page-words.ts";
import { REACHED_WORDS } from "#shared/messages/sheet-words.ts";
import { ADVICE_SOURCE } from "#shared/slip/travel-words.ts";
import { ToolFields } from "#src/bench/sheet/slip-fields.tsx";
import { NumberField, PickField, type StepForm } from "#src/bench/sheet/step-field.tsx";

type SettingProps = { readonly form: StepForm; readonly plan: SheetPlan };

/** Tries at the setting, each where the nut or the shims were and what was read, and what follows from them. */
export function SettingFields({ form, plan }: SettingProps) {
  const { step, fields } = form;
  const tries = readTries(fields);
  const tool = readTool(fields);
  const rows = Math.max(2, tries.length + 1);
  return (
    <>
      <p class="big">{targetText(plan, step)}</p>
      <p class="advice" data-advice aria-live="polite">
        {tool === null ? SHEET.sayTool : adviceText(plan, step, { tries, tool })}
      </p>
      {settingTarget(plan, step) !== null && <p class="faint">{ADVICE_SOURCE}</p>}
      <div data-tries>
        {Array.from({ length: rows }, (_, place) => (
          <fieldset class="try">
            <legend>
              <strong>{SHEET.try(place + 1)}</strong>
            </legend>
            <div class="pair">
              {step === "shims" ? (
                <NumberField form={form} name="tries.shimMm" place={place} label={SHEET.tryShim} />
              ) : (
                <>
                  <NumberField form={form} name="tries.nutDegrees" place={place} label={SHEET.tryNut} />
                  <PickField
                    form={form}
                    name="tries.reached"
                    place={place}
                    label={SHEET.tryReached}
                    options={[
                      ["", REACHED_WORDS.tightened],
                      [BACKED_OFF, REACHED_WORDS.backedOff],
                    ]}
                  />
                </>
              )}
              <NumberField form={form} name="tries.slip" place={place} label={SHEET.trySlip} />
            </div>
          </fieldset>
        ))}
      </div>
      <ToolFields form={form} />
    </>
  );
}

function targetText(plan: SheetPlan, step: StepForm["step"]): string {
  const target = settingTarget(plan, step);
  if (target === null) return plan.aim === null ? SHEET.noAim : SHEET.buildNotKnown;
  const { beforeLock } = plan;
  return step === "slip-before-lock" && beforeLock !== null
    ? SHEET.setBeforeText(beforeLock)
    : SHEET.setTo(target, plan.aim?.band ?? null);
}
