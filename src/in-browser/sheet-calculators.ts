import { HEAT_ALLOY, heatFigures, loadFigures } from "#shared/job/bench-figures.ts";
import { heatLines, loadLines } from "#shared/messages/figure-words.ts";
import { IMPELLER_ALLOYS } from "#shared/slip/impeller-alloys.ts";
import { element } from "#src/in-browser/element.ts";
import { fieldsIn } from "#src/in-browser/sheet-place.ts";

/** The calculators work with every key, and without the network. */
export function bringCalculators(): void {
  document.addEventListener("input", ({ target }) => {
    const form = target instanceof Element ? target.closest<HTMLFormElement>("form[data-calculator]") : null;
    if (form !== null) workOut(form);
  });
  document.addEventListener("submit", (event) => {
    if (!(event.target instanceof HTMLFormElement) || !("calculator" in event.target.dataset)) return;
    event.preventDefault();
    workOut(event.target);
  });
}

function workOut(form: HTMLFormElement): void {
  const fields = fieldsIn(form);
  const alloy = IMPELLER_ALLOYS.find((known) => known === fields[HEAT_ALLOY]?.[0]) ?? "unknown";
  const lines =
    form.dataset["calculator"] === "heat"
      ? heatLines(heatFigures(fields), alloy)
      : loadLines(loadFigures(fields, Number(form.dataset["target"])));
  form.querySelector("[data-result]")?.replaceChildren(...lines.map((line) => element("p", line)));
}
