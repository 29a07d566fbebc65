/** What the slip may be read with. No library here: the browser's script reads this file too. */
export const TOOL_KINDS = ["electronic", "click", "beam", "dial"] as const;

/** Three is the fewest readings whose spread says anything about the spread of the next. */
export const FEWEST_READINGS = 3;

/** A torque tool as it stands on the bench; torques in lbf·ft. */
export type TorqueTool = {
  readonly kind: (typeof TOOL_KINDS)[number];
  /** Limit of error, % of the reading; where `k` is given, the certificate's expanded uncertainty. */
  readonly accuracyPercent: number;
  /** Smallest step that the tool shows. */
  readonly resolution: number;
  /** Coverage factor of the certificate. */
  readonly k?: number | undefined;
};

/** Final slip as read on the bench, all torques in lbf·ft; three readings or more. */
export type SlipReadingRequest = {
  readonly target: number;
  readonly band: { readonly low: number; readonly high: number };
  readonly readings: readonly number[];
  readonly tool: TorqueTool;
};
