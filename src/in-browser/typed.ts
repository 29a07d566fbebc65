import { main, onShown } from "#src/in-browser/page-swap.ts";

const keyOf = (form: HTMLFormElement): string | null => {
  const name = form.dataset["question"] ?? form.dataset["keep"];
  return name === undefined ? null : `typed.${name}`;
};

/** What is typed but not yet sent outlives a reload and the back button, in this tab. */
export function keepTyped(): void {
  document.addEventListener("input", ({ target }) => {
    const form = target instanceof Element ? target.closest("form") : null;
    const key = form === null ? null : keyOf(form);
    if (form === null || key === null) return;
    const typed = [...new FormData(form)].filter(([name, value]) => name !== "wish" && typeof value === "string");
    sessionStorage.setItem(key, JSON.stringify(typed));
  });
  onShown(() => {
    for (const form of main().querySelectorAll("form")) restoreTyped(form);
  });
}

export function restoreTyped(form: HTMLFormElement): void {
  const kept = sessionStorage.getItem(keyOf(form) ?? "");
  if (kept !== null) fill(form, JSON.parse(kept) as [string, string][]);
}

export function forgetTyped(form: HTMLFormElement): void {
  sessionStorage.removeItem(keyOf(form) ?? "");
}

/** Puts values back into a form, by field name; boxes that are not named go off. */
export function fill(form: HTMLFormElement, values: readonly (readonly [string, string])[]): void {
  for (const field of form.elements) {
    const isNamed = values.some(([name]) => name === ("name" in field ? field.name : ""));
    if (field instanceof HTMLInputElement && (field.type === "checkbox" || (field.type === "radio" && isNamed))) {
      field.checked = values.some(([name, value]) => name === field.name && value === field.value);
    } else if (field instanceof HTMLInputElement || field instanceof HTMLSelectElement) {
      const value = values.find(([name]) => name === field.name)?.[1];
      if (value !== undefined && !/hidden|radio/.test(field.type)) field.value = value;
    }
  }
}
