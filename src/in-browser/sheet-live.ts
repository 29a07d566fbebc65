import { readReadings, readTool, readTries } from "#shared/job/sheet-fields.ts";
import { adviceText } from "#shared/job/sheet-plan.ts";
import { slipShown } from "#shared/job/slip-shown.ts";
import { dialLabel, dialLines } from "#shared/messages/sheet-dial-words.ts";
import { SHEET } from "#shared/messages/sheet-page-words.ts";
import { type DialFacts, dialShapes } from "#shared/slip/slip-dial.ts";
import { element } from "#src/in-browser/element.ts";
import { on } from "#src/in-browser/sheet-news.ts";
import { fieldsIn, formIn, forms, planNow, sectionAround, stepOf } from "#src/in-browser/sheet-place.ts";
import { keepRoom } from "#src/in-browser/sheet-rows.ts";

/** The dial and the advice follow every key. */
export function bringLiveFigures(): void {
  on("shown", redrawAll);
  redrawAll();
  document.addEventListener("input", ({ target }) => {
    const section = target instanceof Element ? sectionAround(target) : null;
    const form = section === null ? null : formIn(section);
    if (form === null) return;
    keepRoom(form);
    redraw(form);
  });
}

function redrawAll(): void {
  for (const form of forms()) redraw(form);
}

function redraw(form: HTMLFormElement): void {
  const figure = form.querySelector<HTMLElement>("[data-dial]");
  if (figure !== null) redrawDial(figure, form);
  const advice = form.querySelector("[data-advice]");
  if (advice !== null) redrawAdvice(advice, form);
}

function redrawDial(figure: HTMLElement, form: HTMLFormElement): void {
  const fields = fieldsIn(form);
  const [readings, tool] = [readReadings(fields), readTool(fields)];
  const shown = slipShown(planNow(), { readings, tool });
  const isFinal = figure.dataset["final"] !== undefined;
  const lines = dialLines(shown, { readings: readings.length, hasTool: tool !== null, isFinal });
  figure.dataset["decision"] = shown.decision ?? "none";
  const svg = figure.querySelector("svg");
  if (svg !== null) drawDial(svg, shown.dial);
  figure.querySelector("figcaption")?.replaceChildren(...lines.map((line) => element("p", line)));
}

function drawDial(svg: SVGElement, facts: DialFacts): void {
  svg.setAttribute("aria-label", dialLabel(facts));
  svg.replaceChildren(
    ...dialShapes(facts).map(({ tag, part, attributes, text }) => {
      const shape = document.createElementNS("http://www.w3.org/2000/svg", tag);
      shape.setAttribute("class", `dial-${part}`);
      for (const [name, value] of Object.entries(attributes)) shape.setAttribute(name, String(value));
      if (text !== undefined) shape.textContent = text;
      return shape;
    }),
  );
}

function redrawAdvice(advice: Element, form: HTMLFormElement): void {
  const section = sectionAround(form);
  const fields = fieldsIn(form);
  const tool = readTool(fields);
  if (section === null) return;
  const says =
    tool === null ? SHEET.sayTool : adviceText(planNow(), stepOf(section), { tries: readTries(fields), tool });
  // Said again only where it says something else.
  if (advice.textContent !== (says ?? "")) advice.textContent = says;
}
