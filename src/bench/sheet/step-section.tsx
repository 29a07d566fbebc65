import { sourceText } from "#shared/basics/source.ts";
import { SKIP } from "#shared/job/sheet-fields.ts";
import type { StepStanding } from "#shared/job/sheet-standing.ts";
import { wearSince } from "#shared/job/wear-since.ts";
import { wearText } from "#shared/messages/figure-words.ts";
import { entryText } from "#shared/messages/sheet-entry-words.ts";
import { BECAUSE_WORDS, SHEET, STANDING_WORDS } from "#shared/messages/sheet-page-words.ts";
import { STEP_WORDS } from "#shared/messages/sheet-words.ts";
import { timeText } from "#shared/messages/time-words.ts";
import { HeatCalculator } from "#src/bench/sheet/calculators.tsx";
import { EarlierEntries } from "#src/bench/sheet/earlier-entries.tsx";
import type { SheetModel } from "#src/bench/sheet/sheet-model.ts";
import { StepBody } from "#src/bench/sheet/step-body.tsx";
import { fieldId, type StepForm, TextField } from "#src/bench/sheet/step-field.tsx";

type StepProps = {
  readonly model: SheetModel;
  readonly at: StepStanding;
  readonly place: number;
  readonly form: StepForm;
};

/** One step: folded with its answer, or open with its words and its form. */
export function StepSection({ model, at, place, form }: StepProps) {
  const { id } = at.step;
  const words = STEP_WORDS[id];
  const stored = model.view.sheet[id];
  return (
    <details
      class="step"
      name="step"
      id={`step-${id}`}
      data-step={id}
      data-kind={at.step.kind}
      data-standing={at.standing}
      open={model.current === id}
    >
      <summary>
        <span class="place">{SHEET.stepOf(place, model.standing.steps.length)}</span>
        <h2>{words.title}</h2>
        <span class="stands">{STANDING_WORDS[at.standing]}</span>
        <span class="answer" data-answer>
          {stored === undefined ? "" : entryText(stored.entry)}
        </span>
      </summary>
      <div class="step-body">
        {at.because !== null && at.because !== "nothing-written" && <p class="problem">{BECAUSE_WORDS[at.because]}</p>}
        {words.cautions.map(({ signal, text }) => (
          <div class={`signal ${SIGNAL_CLASS[signal]}`}>
            <b>{signal}</b>
            <p>{text}</p>
          </div>
        ))}
        <ol class="says">
          {words.says.map((line) => (
            <li>{line}</li>
          ))}
        </ol>
        <p class="faint">{SHEET.source(sourceText(at.step.source))}</p>
        {stored !== undefined && (
          <p class="faint">
            {SHEET.by(stored.by, timeText(stored.at, model.job.booking.time.zone, model.front.locale))}
          </p>
        )}
        <EarlierEntries model={model} step={id} />
        {id === "as-found-slip" && <Wear model={model} />}
        {id === "impeller" && <HeatCalculator sheet={`/shop/jobs/${model.job.number}/sheet`} asked={model.asked} />}
        {model.mayWrite && <StepFormOf model={model} at={at} form={form} />}
      </div>
    </details>
  );
}

/** As left at the last service here to as found now. */
function Wear({ model: { view, case: it, job } }: Pick<StepProps, "model">) {
  const entry = view.sheet["as-found-slip"]?.entry;
  const found = entry?.kind === "slip" ? entry : null;
  const says = wearText(wearSince(it, { last: view.lastService, found, hoursNow: job.answers.engineHours }));
  return says === null ? null : <p class="advice">{says}</p>;
}

const SIGNAL_CLASS = { DANGER: "danger", WARNING: "warning", CAUTION: "caution", NOTICE: "note" } as const;

function StepFormOf({ model, at, form }: Omit<StepProps, "place">) {
  const { id, kind } = at.step;
  const stored = model.view.sheet[id];
  const problems = Object.entries(form.problems);
  return (
    <>
      <form method="post" action={`/shop/jobs/${model.job.number}/sheet/${id}`} novalidate data-sheet-form>
        <input type="hidden" name="after" value={String(stored?.version ?? 0)} />
        <input type="hidden" name="key" value={model.newKey()} />
        {problems.length > 0 && (
          <div class="problem" role="alert">
            <p>{SHEET.mend}</p>
            <ul>
              {problems.map(([name, accepted]) => (
                <li>
                  <a href={`#${idOfProblem(form, name)}`}>{SHEET.mendField(name)}</a>: {accepted}
                </li>
              ))}
            </ul>
          </div>
        )}
        <StepBody model={model} step={at.step} form={form} />
        <p class="actions">
          <button type="submit" name="do" value="keep">
            {kind === "slip" || kind === "setting" ? SHEET.keepReadings : kind === "done" ? SHEET.done : SHEET.keep}
          </button>
        </p>
        <details class="leave-out" open={SKIP.why in form.problems}>
          <summary>{SHEET.skip}</summary>
          <TextField form={form} name={SKIP.why} label={SHEET.skipWhy} hint={SHEET.skipHint} />
          <button type="submit" class="quiet" name={SKIP.button} value={SKIP.value}>
            {SHEET.skipButton}
          </button>
        </details>
      </form>
      <div class="pad" data-pad hidden></div>
    </>
  );
}

/** A field's problem may name one of several of the same name: `readings.2`. */
function idOfProblem({ step }: StepForm, name: string): string {
  const [, stem = name, place] = /^(readings|tries\.\w+)\.(\d+)$/.exec(name) ?? [];
  return fieldId(step, stem, Number(place ?? 0));
}
