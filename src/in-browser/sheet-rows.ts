import type { FormFields } from "#shared/job/sheet-fields.ts";
import { SHEET } from "#shared/messages/sheet-page-words.ts";

/** There is always room for one more reading or try. */
export function keepRoom(form: HTMLFormElement): void {
  for (const rows of rowsIn(form)) {
    const last = rows.lastElementChild;
    if (last !== null && [...last.querySelectorAll("input")].some(({ value }) => value.trim() !== "")) addRow(rows);
  }
}

/** As many rows as the fields fill. */
export function makeRoom(form: HTMLFormElement, fields: FormFields): void {
  for (const rows of rowsIn(form)) {
    const name = rows.querySelector("input")?.name ?? "";
    while (rows.children.length < (fields[name]?.length ?? 0)) addRow(rows);
  }
}

const rowsIn = (form: HTMLFormElement) => form.querySelectorAll<HTMLElement>("[data-readings], [data-tries]");

/** The last row again, empty, its ids counted one up. */
function addRow(rows: HTMLElement): void {
  const place = rows.children.length;
  const row = rows.lastElementChild?.cloneNode(true);
  if (!(row instanceof HTMLElement)) return;
  for (const problem of row.querySelectorAll(".problem")) problem.remove();
  for (const field of row.querySelectorAll("input")) {
    field.value = "";
    field.removeAttribute("aria-invalid");
    field.removeAttribute("aria-describedby");
  }
  for (const attribute of ["id", "for"]) {
    for (const each of row.querySelectorAll(`[${attribute}]`)) {
      const plain = (each.getAttribute(attribute) ?? "").replace(/\.\d+$/, "");
      each.setAttribute(attribute, `${plain}.${place}`);
    }
  }
  const isTry = "tries" in rows.dataset;
  const heading = row.querySelector(isTry ? "legend strong" : "label");
  if (heading !== null) heading.textContent = isTry ? SHEET.try(place + 1) : SHEET.reading(place + 1);
  rows.append(row);
}
