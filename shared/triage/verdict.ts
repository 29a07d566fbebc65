/** Mildest first: the order is the severity. */
export const VERDICTS = ["not-due", "slip-check", "full-rebuild", "stop-riding"] as const;
export type Verdict = (typeof VERDICTS)[number];

export const severity = (verdict: Verdict): number => VERDICTS.indexOf(verdict);
export const isMilder = (one: Verdict, other: Verdict): boolean => severity(one) < severity(other);
