import type { Draft, QuestionId } from "#shared/intake/draft.ts";
import { fieldsFor } from "#shared/intake/form-fields.ts";
import { QUESTIONS, type Question } from "#shared/intake/questions.ts";
import { FIELD, type Fields } from "#shared/intake/read-answer.ts";

/** A question's field on a form that holds them all. @example fieldName("boost", "unit") // "boost.unit" */
export const fieldName = (question: QuestionId, field: string): string => `${question}.${field}`;

/**
 * The fields of one question out of the whole form, by their plain names. What was left empty is not sure, and a date
 * or hours typed beside "not sure" are believed.
 */
export function fieldsOf({ id, answer }: Question, form: Fields): Fields {
  const prefix = `${id}.`;
  const own = Object.fromEntries(
    Object.entries(form).flatMap(([name, values]) =>
      name.startsWith(prefix) ? [[name.slice(prefix.length), values]] : [],
    ),
  );
  switch (answer.kind) {
    case "several":
    case "one":
      return own;
    case "number":
    case "measure":
      return isEmpty(own, FIELD.value) ? { ...own, [FIELD.notSure]: ["yes"] } : own;
    case "service": {
      const isKnown = [FIELD.date, FIELD.hours, FIELD.leftAt].some((field) => !isEmpty(own, field));
      return isKnown && own[FIELD.when]?.[0] === "unknown" ? { ...own, [FIELD.when]: ["known"] } : own;
    }
  }
}

/** The form as it was filled in for these answers. */
export const filledFrom = (draft: Draft): Fields =>
  Object.fromEntries(
    QUESTIONS.flatMap((question) => {
      const answer = draft[question.id];
      if (answer === undefined) return [];
      return Object.entries(fieldsFor(question, answer)).map(([field, values]) => [
        fieldName(question.id, field),
        [values].flat(),
      ]);
    }),
  );

const isEmpty = (fields: Fields, name: string): boolean => (fields[name]?.[0] ?? "").trim() === "";
