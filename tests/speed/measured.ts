/** One line of the table. */
export type Measured = {
  readonly what: string;
  readonly measured: string;
  /** Absent where a figure is shown for scale only. */
  readonly goal?: { readonly text: string; readonly met: boolean };
};

/** @example asRatio("a against b", 0.7, { least: 0.5 }) // measured "0.70", goal "0.50 or more", met */
export function asRatio(what: string, ratio: number, goal: { readonly least: number } | { readonly most: number }) {
  const [limit, word, met] =
    "least" in goal ? [goal.least, "or more", ratio >= goal.least] : [goal.most, "or less", ratio <= goal.most];
  return { what, measured: ratio.toFixed(2), goal: { text: `${limit.toFixed(2)} ${word}`, met } };
}

export const atMostMs = (what: string, ms: number, most: number): Measured => ({
  what,
  measured: `${ms.toFixed(2)} ms`,
  goal: { text: `under ${most} ms`, met: ms < most },
});

export const atMostMicroseconds = (what: string, microseconds: number, most: number): Measured => ({
  what,
  measured: `${microseconds.toFixed(1)} µs`,
  goal: { text: `under ${most} µs`, met: microseconds < most },
});

/** A kilobyte is 1000 bytes. */
export const atMostKilobytes = (what: string, bytes: number, most: number): Measured => ({
  what,
  measured: `${(bytes / 1000).toFixed(1)} kB`,
  goal: { text: `under ${most} kB`, met: bytes < most * 1000 },
});

/** @example perSecond(1234.5) // "1,235/s" */
export const perSecond = (rate: number): string => `${Math.round(rate).toLocaleString("en-US")}/s`;

/** The lines in columns, every goal with whether it was met. */
export function tableOf(lines: readonly Measured[]): string {
  const cells = [
    ["what", "measured", "goal", ""],
    ...lines.map(({ what, measured, goal }) => [
      what,
      measured,
      goal?.text ?? "for scale",
      goal === undefined ? "" : goal.met ? "met" : "NOT MET",
    ]),
  ];
  const widths = [0, 1, 2, 3].map((column) => Math.max(...cells.map((row) => row[column]?.length ?? 0)));
  return cells
    .map((row) =>
      row
        .map((cell, column) => cell.padEnd(widths[column] ?? 0))
        .join("  ")
        .trimEnd(),
    )
    .join("\n");
}
