import type { FormFields } from "#shared/job/sheet-fields.ts";
import { fieldsIn, formIn, forms, jobNumber, sectionAround, stepOf } from "#src/in-browser/sheet-place.ts";
import { makeRoom } from "#src/in-browser/sheet-rows.ts";

const nameOf = (section: HTMLElement): string => `sheet-draft|${jobNumber()}|${stepOf(section)}`;

/** What is typed and not written down yet survives a reload, with the version that its writer had seen. */
export function bringDrafts(): void {
  for (const form of forms()) {
    const section = sectionAround(form);
    const draft = section === null ? null : localStorage.getItem(nameOf(section));
    if (section === null || draft === null) continue;
    fill(form, JSON.parse(draft) as FormFields);
    section.dataset["dirty"] = "";
  }
  document.addEventListener("input", ({ target }) => {
    const section = target instanceof Element ? sectionAround(target) : null;
    const form = section === null ? null : formIn(section);
    if (section === null || form === null) return;
    section.dataset["dirty"] = "";
    localStorage.setItem(nameOf(section), JSON.stringify(fieldsIn(form)));
  });
}

export const isDirty = (section: HTMLElement): boolean => "dirty" in section.dataset;

/** It is written down, or given up. */
export function forgetDraft(section: HTMLElement | null): void {
  if (section === null) return;
  delete section.dataset["dirty"];
  localStorage.removeItem(nameOf(section));
}

function fill(form: HTMLFormElement, fields: FormFields): void {
  makeRoom(form, fields);
  for (const [name, values] of Object.entries(fields)) {
    if (name === "key") continue;
    const fields = [...form.elements].filter((it) => it.getAttribute("name") === name);
    fields.forEach((field, place) => {
      const value = values[place] ?? "";
      if (field instanceof HTMLInputElement && field.type === "radio") field.checked = values.includes(field.value);
      else if (isTyped(field)) field.value = value;
    });
  }
}

const isTyped = (field: Element): field is HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement =>
  field instanceof HTMLInputElement || field instanceof HTMLTextAreaElement || field instanceof HTMLSelectElement;
