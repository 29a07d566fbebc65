import type { SheetStepId } from "#shared/job/sheet-entry.ts";
import type { FormFields } from "#shared/job/sheet-fields.ts";
import type { SheetPlan } from "#shared/job/sheet-plan.ts";
import type { SheetStep } from "#shared/job/sheet-steps.ts";

/** Where the steps stand; null where the page has none. */
export const steps = (): HTMLElement | null => document.querySelector("[data-sheet]");

export const jobNumber = (): string => steps()?.dataset["sheet"] ?? "";

/** Who was signed in when the shop last said so, by name. */
export const atWork = (): string => steps()?.dataset["staff"] ?? "";
export const setAtWork = (name: string): void => steps()?.setAttribute("data-staff", name);

/** The figures that the page was made with. */
export const planNow = (): SheetPlan => JSON.parse(steps()?.dataset["plan"] ?? "null") as SheetPlan;

export const sections = (): readonly HTMLDetailsElement[] => [
  ...document.querySelectorAll<HTMLDetailsElement>("details[data-step]"),
];

export const sectionOf = (step: SheetStepId): HTMLDetailsElement | null =>
  document.querySelector(`details[data-step="${step}"]`);

export const stepOf = (section: HTMLElement): SheetStepId => section.dataset["step"] as SheetStepId;
export const kindOf = (section: HTMLElement): SheetStep["kind"] => section.dataset["kind"] as SheetStep["kind"];
export const formIn = (section: HTMLElement): HTMLFormElement | null => section.querySelector("form[data-sheet-form]");

/** The version that a form's writer has seen, or the key of its next entry. */
export function setStamp(section: HTMLElement, name: "after" | "key", value: string): void {
  formIn(section)?.querySelector(`input[name="${name}"]`)?.setAttribute("value", value);
}

/** Every form that is on the page now: a refresh may bring others. */
export const forms = (): readonly HTMLFormElement[] => sections().flatMap((section) => formIn(section) ?? []);

export function sectionAround(inside: Element): HTMLDetailsElement | null {
  return inside.closest<HTMLDetailsElement>("details[data-step]");
}

/** A form's fields as they are posted, the pressed button's included. */
export function fieldsIn(form: HTMLFormElement, button: HTMLElement | null = null): FormFields {
  const fields: Record<string, string[]> = {};
  for (const [name, value] of new FormData(form, button)) {
    if (typeof value === "string") fields[name] = [...(fields[name] ?? []), value];
  }
  return fields;
}
