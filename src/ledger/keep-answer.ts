import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { answered } from "#shared/intake/conversation.ts";
import type { Draft, QuestionId } from "#shared/intake/draft.ts";
import type { StoredDraft } from "#shared/shop/booking.ts";
import { countDrafts, DRAFT_LIVES_MS, dropIdleDrafts, findDraft, keepDraft } from "#src/ledger/draft-rows.ts";
import { hasBooked, openHoldOf, toldHold } from "#src/ledger/hold-rows.ts";
import { type Turn, today } from "#src/ledger/turn.ts";

/** Far more than a shop ever has; keeps a flood of empty visits from filling the storage. Default of this project. */
export const MOST_DRAFTS = 20_000;
/** As finding the idlest means looking through all of them, some are dropped at a time. Default of this project. */
export const DROPPED_AT_ONCE = 100;

export type AnswerWish = { readonly tokenHash: string; readonly question: QuestionId; readonly answer: unknown };

/** The conversation after the answer. `next` is named, not handed over: a question cannot be sent between processes. */
export type KeptAnswer = {
  readonly draft: Draft;
  readonly dropped: readonly QuestionId[];
  readonly next: QuestionId | null;
  readonly expiresAt: number;
};

/** The first answer begins the conversation; every answer gives it another fortnight. */
export function keepAnswer(
  turn: Turn,
  { tokenHash, question, answer }: AnswerWish,
): Outcome<KeptAnswer, { readonly reason: "too-many-drafts" }> {
  const kept = findDraft(turn.sql, tokenHash, turn.now);
  if (kept === null && !hasRoom(turn)) return refuse({ reason: "too-many-drafts" });
  const { ceramicUntilYear } = turn.settings().settings.triage;
  const step = answered(kept?.draft ?? {}, question, answer, { onDate: today(turn), ceramicUntilYear });
  const expiresAt = turn.now + DRAFT_LIVES_MS;
  keepDraft(turn.sql, tokenHash, { draft: step.draft, expiresAt });
  return accept({ draft: step.draft, dropped: step.dropped, next: step.next?.id ?? null, expiresAt });
}

/** A flood must not shut out the next owner: where all places are taken, the idlest conversations go. */
const hasRoom = ({ sql }: Turn): boolean => countDrafts(sql) < MOST_DRAFTS || dropIdleDrafts(sql, DROPPED_AT_ONCE);

/** The conversation so far, with the time that it holds. */
export function storedDraft({ sql, now }: Turn, tokenHash: string): StoredDraft | null {
  const kept = findDraft(sql, tokenHash, now);
  if (kept === null) return null;
  const hold = openHoldOf(sql, tokenHash, now);
  return { ...kept, hold: hold === null ? null : toldHold(hold), booked: hasBooked(sql, tokenHash) };
}
