/** What came, went, or was put right. Never edited; a mistake is mended by another entry. */
export type StockChange =
  | { readonly kind: "receipt" | "use" | "use-undone"; readonly count: number }
  /** Counted by hand: from here on the book says this. */
  | { readonly kind: "count"; readonly found: number };

/** What the book says of a shelf. */
export type Balance = {
  readonly onHand: number;
  /** More was taken than the book knew of, and nobody has counted since. */
  readonly countAgain: boolean;
};

export const EMPTY: Balance = { onHand: 0, countAgain: false };

/** By how much a change moves the book. @example changeOf({ onHand: 5, countAgain: false }, { kind: "count", found: 3 }) // -2 */
export function changeOf(before: Balance, change: StockChange): number {
  switch (change.kind) {
    case "receipt":
    case "use-undone":
      return change.count;
    case "use":
      return -change.count;
    case "count":
      return change.found - before.onHand;
  }
}

/** The book after a change. A part in the hand is believed over the book: it may say less than nothing, until counted. */
export function balanceAfter(before: Balance, change: StockChange): Balance {
  const onHand = before.onHand + changeOf(before, change);
  return { onHand, countAgain: change.kind !== "count" && (before.countAgain || onHand < 0) };
}
