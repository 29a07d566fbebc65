import type { Clock } from "#src/ledger/clock.ts";

export const systemClock: Clock = { now: () => Date.now() };
