import { readTool, toolFields } from "#shared/job/sheet-fields.ts";
import { SHEET } from "#shared/messages/sheet-page-words.ts";
import { TOOL_WORDS } from "#shared/messages/sheet-words.ts";
import { on } from "#src/in-browser/sheet-news.ts";
import { fieldsIn, forms } from "#src/in-browser/sheet-place.ts";

const NAME = "sheet-wrench";

/** The wrench that was used last on this device is there already at the next reading. */
export function bringTool(): void {
  on("shown", fillTool);
  fillTool();
  document.addEventListener("input", ({ target }) => {
    const form = target instanceof Element ? target.closest<HTMLFormElement>("form[data-sheet-form]") : null;
    if (form !== null && target instanceof Element && target.getAttribute("name")?.startsWith("tool.")) sayTool(form);
  });
}

export function rememberTool(form: HTMLFormElement): void {
  const tool = readTool(fieldsIn(form));
  if (tool === null) return;
  localStorage.setItem(NAME, JSON.stringify(toolFields(tool)));
  fillTool();
}

/** Fills in the wrench where none is described yet. */
function fillTool(): void {
  const remembered = JSON.parse(localStorage.getItem(NAME) ?? "{}") as Readonly<Record<string, readonly string[]>>;
  for (const form of forms()) {
    if (form.querySelector(".tool") === null || readTool(fieldsIn(form)) !== null) continue;
    for (const [name, [value = ""]] of Object.entries(remembered)) {
      const field = form.elements.namedItem(name);
      if (field instanceof HTMLInputElement || field instanceof HTMLSelectElement) field.value = value;
    }
    sayTool(form);
    if (readTool(fieldsIn(form)) !== null) form.querySelector(".tool")?.removeAttribute("open");
  }
}

function sayTool(form: HTMLFormElement): void {
  const tool = readTool(fieldsIn(form));
  const text = form.querySelector("[data-tool-text]");
  if (text === null) return;
  text.textContent =
    tool === null ? SHEET.toolUnknown : SHEET.toolText(TOOL_WORDS[tool.kind], tool.accuracyPercent, tool.resolution);
}
