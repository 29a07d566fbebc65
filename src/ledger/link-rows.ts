/** An owner's link dies this long after it was made, unless a new one is made before; default of this project. */
const LINK_LIVES_MS = 400 * 86_400_000;

/** Only the hash is kept: who reads the database cannot open anybody's job with it. */
export function keepOwnerLink(
  sql: SqlStorage,
  { hash, job, generation }: { readonly hash: string; readonly job: number; readonly generation: number },
  now: number,
): void {
  const query = "INSERT INTO link (hash, purpose, subject, generation, expires_at) VALUES (?, 'owner', ?, ?, ?)";
  sql.exec(query, hash, job, generation, now + LINK_LIVES_MS);
}
