import type { BenchJob } from "#shared/calendar/calendar-settings.ts";
import type { EngineDebris } from "#shared/triage/engine-debris.ts";
import type { Reason } from "#shared/triage/judge.ts";
import type { Verdict } from "#shared/triage/verdict.ts";

/** What the open unit says: of the engine, of the work it needs, and of what its owner should do. */
export type BenchFindings = {
  /** False while nobody has looked inside: what the owner's answers said stands alone. */
  readonly opened: boolean;
  /** Never milder than the verdict that the job was booked with. */
  readonly verdict: Verdict;
  /** The work that it really needs. */
  readonly work: BenchJob;
  readonly engineDebris: EngineDebris;
  /** Every rule that held, worst first; never empty. */
  readonly reasons: readonly Reason[];
  /** What the owner does next, in order; never empty. */
  readonly nextSteps: readonly Reason[];
};
