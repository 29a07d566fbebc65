import {
  type FigureField,
  HEAT_ALLOY,
  HEAT_FIELDS,
  heatFigures,
  LOAD_FIELDS,
  loadFigures,
} from "#shared/job/bench-figures.ts";
import type { FormFields } from "#shared/job/sheet-fields.ts";
import { ALLOY_WORDS, FIGURE_LABELS, FIGURES, heatLines, loadLines } from "#shared/messages/figure-words.ts";
import { IMPELLER_ALLOYS } from "#shared/slip/impeller-alloys.ts";

type CalculatorProps = {
  /** The address of the sheet, which works it out where there is no script. */
  readonly sheet: string;
  readonly asked: FormFields;
};

/** Temperature at which the impeller slides. */
export function HeatCalculator({ sheet, asked }: CalculatorProps) {
  const alloy = IMPELLER_ALLOYS.find((known) => known === asked[HEAT_ALLOY]?.[0]) ?? "unknown";
  return (
    <details class="calculator" open={HEAT_ALLOY in asked}>
      <summary>{FIGURES.heatTitle}</summary>
      <form method="get" action={`${sheet}#step-impeller`} data-calculator="heat">
        <input type="hidden" name="step" value="impeller" />
        <div class="pair">
          <div class="field">
            <label for={HEAT_ALLOY}>{FIGURES.alloy}</label>
            <select id={HEAT_ALLOY} name={HEAT_ALLOY}>
              {IMPELLER_ALLOYS.toReversed().map((known) => (
                <option value={known} selected={known === alloy}>
                  {ALLOY_WORDS[known]}
                </option>
              ))}
            </select>
          </div>
          <Figures fields={HEAT_FIELDS} asked={asked} />
        </div>
        <Result lines={HEAT_ALLOY in asked ? heatLines(heatFigures(asked), alloy) : []} />
      </form>
    </details>
  );
}

type LoadProps = CalculatorProps & { readonly target: number; readonly boostPsi: number | null };

/** What the impeller asks of the shaft, for planning. */
export function LoadCalculator({ sheet, asked, target, boostPsi }: LoadProps) {
  const isAsked = "load.boostPsi" in asked;
  const known = boostPsi === null || isAsked ? asked : { ...asked, "load.boostPsi": [String(boostPsi)] };
  return (
    <details class="calculator screen" id="load-check" open={isAsked}>
      <summary>{FIGURES.loadTitle}</summary>
      <p>{FIGURES.loadSays}</p>
      <form method="get" action={`${sheet}#load-check`} data-calculator="load" data-target={String(target)}>
        <div class="pair">
          <Figures fields={LOAD_FIELDS} asked={known} />
        </div>
        <Result lines={isAsked ? loadLines(loadFigures(asked, target)) : []} />
      </form>
    </details>
  );
}

type FiguresProps = {
  readonly fields: readonly (FigureField & { readonly name: keyof typeof FIGURE_LABELS })[];
  readonly asked: FormFields;
};

const Figures = ({ fields, asked }: FiguresProps) => (
  <>
    {fields.map(({ name, least, most, usual = "" }) => (
      <div class="field">
        <label for={name}>{FIGURE_LABELS[name]}</label>
        <div class="faint" id={`${name}.hint`}>
          {FIGURES.range(least, most)}
        </div>
        <input
          id={name}
          name={name}
          aria-describedby={`${name}.hint`}
          type="text"
          inputmode="decimal"
          autocomplete="off"
          data-number
          value={asked[name]?.[0] ?? usual}
        />
      </div>
    ))}
  </>
);

const Result = ({ lines }: { readonly lines: readonly string[] }) => (
  <>
    <div data-result aria-live="polite">
      {lines.map((line) => (
        <p>{line}</p>
      ))}
    </div>
    <p class="actions">
      <button type="submit" class="quiet">
        {FIGURES.workOut}
      </button>
    </p>
  </>
);
