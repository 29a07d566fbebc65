/** The time, so that a test may choose it. */
export type Clock = {
  /** Epoch milliseconds. */
  readonly now: () => number;
};
