/**
 * The newest move that nobody took back, of a job's moves in order: each undoing takes off the newest before it.
 * @example lastStanding([{ what: "receive" }, { what: "start" }, { what: "undone" }]) // { what: "receive" }
 */
export function lastStanding<Move extends { readonly what: string }>(moves: readonly Move[]): Move | null {
  const standing: Move[] = [];
  for (const move of moves) {
    if (move.what === "undone") standing.pop();
    else standing.push(move);
  }
  return standing.at(-1) ?? null;
}
