import type { QuestionId } from "#shared/intake/draft.ts";
import { questionOf } from "#shared/intake/questions.ts";
import { droppedWords } from "#shared/messages/owner-words.ts";
import { TAG_LABELS } from "#shared/messages/tag-lines.ts";

/** Takes along, to the page that comes next, which answers went. @example droppedQuery(["boost"]) // "?dropped=boost" */
export const droppedQuery = (dropped: readonly QuestionId[]): string =>
  dropped.length > 0 ? `?dropped=${dropped.join(".")}` : "";

export const droppedIn = (query: string | undefined): readonly QuestionId[] =>
  (query ?? "").split(".").flatMap((id) => questionOf(id)?.id ?? []);

/** Says which answers went because an earlier one changed. There, empty, before it has anything to say. */
export const Dropped = ({ dropped }: { readonly dropped: readonly QuestionId[] }) => (
  <p class="notice" role="status" id="dropped">
    {droppedWords(dropped.map((id) => TAG_LABELS[id]))}
  </p>
);
