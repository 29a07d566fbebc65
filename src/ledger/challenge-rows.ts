import { firstRow, textIn } from "#src/ledger/row.ts";
import type { Turn } from "#src/ledger/turn.ts";

/** How long a person has to answer a challenge; default of this project (Web Authentication Level 3, 13.4.3, asks for a short life). */
const CHALLENGE_LIVES_MS = 5 * 60_000;
/** Open challenges that one source may have; the oldest goes for the next. Default of this project. */
const MOST_OPEN = 20;

/** `handle` is of the account that it is for; empty where it is not known yet. */
export type NewChallenge = {
  readonly challenge: string;
  readonly purpose: "sign-in" | "add-passkey";
  readonly handle: string;
  readonly source: string;
};

export function keepChallenge({ sql, now }: Turn, { challenge, purpose, handle, source }: NewChallenge): void {
  sql.exec(
    `DELETE FROM challenge WHERE challenge IN
     (SELECT challenge FROM challenge WHERE source = ? ORDER BY expires_at DESC LIMIT -1 OFFSET ?)`,
    source,
    MOST_OPEN - 1,
  );
  const query = "INSERT INTO challenge (challenge, purpose, handle, source, expires_at) VALUES (?, ?, ?, ?, ?)";
  sql.exec(query, challenge, purpose, handle, source, now + CHALLENGE_LIVES_MS);
}

/** Uses a challenge up, whatever comes of it. False where we set none like that, or it was used, or it is too old. */
export function useChallenge(
  { sql, now }: Turn,
  { challenge, purpose, handle }: Omit<NewChallenge, "source">,
): boolean {
  const query = "DELETE FROM challenge WHERE challenge = ? AND expires_at > ? RETURNING purpose, handle";
  const row = firstRow(sql, query, challenge, now);
  return row !== undefined && textIn(row, "purpose") === purpose && textIn(row, "handle") === handle;
}
