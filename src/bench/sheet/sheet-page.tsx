import { SHEET_SCRIPT } from "#build/assets.ts";
import type { SheetStepId } from "#shared/job/sheet-entry.ts";
import { fieldsOf, toolFields } from "#shared/job/sheet-fields.ts";
import { entryText } from "#shared/messages/sheet-entry-words.ts";
import { SHEET, STANDING_WORDS } from "#shared/messages/sheet-page-words.ts";
import { stateText } from "#shared/messages/sheet-refused-words.ts";
import { STEP_WORDS } from "#shared/messages/sheet-words.ts";
import { FactList } from "#src/bench/fact-list.tsx";
import { LoadCalculator } from "#src/bench/sheet/calculators.tsx";
import type { SheetModel } from "#src/bench/sheet/sheet-model.ts";
import type { StepForm } from "#src/bench/sheet/step-field.tsx";
import { StepSection } from "#src/bench/sheet/step-section.tsx";
import { ShopPage } from "#src/bench/shop-page.tsx";

type SheetPageProps = {
  readonly model: SheetModel;
  /** What was just written, to be said once. */
  readonly done?: SheetStepId | null;
  /** A form that was not accepted, as it was typed. */
  readonly refused?: StepForm | null;
  readonly problem?: string | undefined;
};

/** The bench sheet: one step open, the next one peeking, the others folded with their answers. */
export function SheetPage({ model, done = null, refused = null, problem }: SheetPageProps) {
  const { job, front, standing } = model;
  return (
    <ShopPage title={SHEET.title(job.number)} front={front} script={SHEET_SCRIPT}>
      <p class="screen">
        <a class="button quiet" href={`/shop/jobs/${job.number}`}>
          {SHEET.toJob}
        </a>
      </p>
      {problem !== undefined && (
        <p class="problem" role="alert">
          {problem}
        </p>
      )}
      {done !== null && (
        <p class="notice screen" role="status">
          {SHEET.saved(STEP_WORDS[done].title)}
        </p>
      )}
      <Aim model={model} />
      <div data-standing-text>
        {!model.mayWrite && <p class="notice">{SHEET.notOnBench(stateText(job.state))}</p>}
        {job.state === "received" && <p class="notice">{SHEET.starts}</p>}
        <p>{standing.complete ? SHEET.complete : SHEET.missing(standing.missing.length)}</p>
      </div>
      <div
        class="steps screen"
        data-sheet={job.number}
        data-staff={model.staff}
        data-plan={JSON.stringify(model.plan)}
        data-steps={JSON.stringify(model.standing.steps.map(({ step }) => step.id))}
      >
        {standing.steps.map((at, index) => (
          <>
            {at.step.id === model.current && <div id="now" />}
            <StepSection model={model} at={at} place={index + 1} form={formOf(model, at.step.id, refused)} />
          </>
        ))}
      </div>
      {model.plan.aim !== null && (
        <LoadCalculator
          sheet={`/shop/jobs/${job.number}/sheet`}
          asked={model.asked}
          target={model.plan.aim.target}
          boostPsi={model.case.answers.mods.boostPsi}
        />
      )}
      <Paper model={model} />
    </ShopPage>
  );
}

/** As it was typed, else as it was written, else empty with the wrench that this sheet was read with before. */
function formOf({ view }: SheetModel, step: SheetStepId, refused: StepForm | null): StepForm {
  if (refused?.step === step) return refused;
  const entry = view.sheet[step]?.entry;
  return { step, problems: {}, fields: { ...usualTool(view.sheet), ...(entry === undefined ? {} : fieldsOf(entry)) } };
}

function usualTool(sheet: SheetModel["view"]["sheet"]) {
  const newest = Object.values(sheet)
    .flatMap(({ at, entry }) => ("tool" in entry ? [{ at, tool: entry.tool }] : []))
    .toSorted((one, other) => other.at - one.at)[0];
  return newest === undefined ? {} : toolFields(newest.tool);
}

function Aim({ model: { plan, case: it } }: { readonly model: SheetModel }) {
  const { aim, beforeLock } = plan;
  return (
    <div data-aim>
      <FactList
        facts={[
          [SHEET.aim, aim === null ? SHEET.noAim : SHEET.aimText(aim.target, aim.band.low, aim.band.high)],
          ...(beforeLock === null
            ? []
            : [
                [SHEET.setBefore, SHEET.setBeforeText(beforeLock)] as const,
                [SHEET.rise, SHEET.riseText(beforeLock)] as const,
              ]),
        ]}
      />
      {it.slip.cautions.map((caution) => (
        <div class="signal note">
          <b>{SHEET.notice}</b>
          <p>{caution}</p>
        </div>
      ))}
    </div>
  );
}

/** For the paper: every step with its answer, or room to write one. */
const Paper = ({ model: { standing, view } }: { readonly model: SheetModel }) => (
  <ol class="paper">
    {standing.steps.map(({ step, standing: stands }) => {
      const entry = view.sheet[step.id]?.entry;
      return (
        <li>
          <strong>{STEP_WORDS[step.id].title}</strong> ({STANDING_WORDS[stands]})
          <br />
          {STEP_WORDS[step.id].says.join(" ")}
          <div class="written">{entry === undefined ? "" : entryText(entry)}</div>
        </li>
      );
    })}
  </ol>
);
