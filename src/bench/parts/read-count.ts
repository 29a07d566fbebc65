/** A whole number within bounds, as typed, or null. */
export function readCount(text: string | undefined, least: number, most: number): number | null {
  const typed = text?.trim() ?? "";
  if (!/^\d{1,4}$/.test(typed)) return null;
  const count = Number(typed);
  return count >= least && count <= most ? count : null;
}

/** A few words, or null where there are none; more than a line's worth is not accepted. */
export function readNote(text: string | undefined): string | null {
  const note = text?.trim() ?? "";
  return note === "" || note.length > MOST_LETTERS ? null : note;
}

const MOST_LETTERS = 200;
