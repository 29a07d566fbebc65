import { type Outcome, refuse } from "#shared/basics/outcome.ts";
import type { KeyReused, WishKey } from "#shared/shop/booking.ts";
import { firstRow, textIn } from "#src/ledger/row.ts";

/** How long a wish that is asked again gets its first answer again. */
export const WISH_LIVES_MS = 24 * 3_600_000;

/**
 * Grants a wish once: asked again with the same key and body, it gets its first answer. Called within the transaction
 * of the decision, so a wish is on record exactly when its effect is. A refusal has no effect, so it is not kept: asked
 * again, the wish sees the world as it is then.
 */
export function answerOnce<Value, Refusal extends { readonly reason: string }>(
  sql: SqlStorage,
  { wishKey, now }: { readonly wishKey: WishKey; readonly now: number },
  decide: () => Outcome<Value, Refusal | KeyReused>,
): Outcome<Value, Refusal | KeyReused> {
  const { scope, key, fingerprint } = wishKey;
  const earlier = firstRow(sql, "SELECT fingerprint, answer FROM wish WHERE scope = ? AND key = ?", scope, key);
  if (earlier !== undefined) {
    if (textIn(earlier, "fingerprint") !== fingerprint) return refuse({ reason: "key-reused" });
    return JSON.parse(textIn(earlier, "answer")) as Outcome<Value, Refusal>;
  }
  const answer = decide();
  if (answer.ok) {
    const query = "INSERT INTO wish (scope, key, fingerprint, answer, at) VALUES (?, ?, ?, ?, ?)";
    sql.exec(query, scope, key, fingerprint, JSON.stringify(answer), now);
  }
  return answer;
}
