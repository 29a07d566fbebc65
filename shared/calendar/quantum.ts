/** Bench time is counted in steps of 15 minutes of exact time: a day on which the clocks change is longer or shorter. */
export const QUANTUM_MINUTES = 15;
const QUANTUM_MS = QUANTUM_MINUTES * 60_000;

/** Quarter-hours since 1970-01-01T00:00Z. Never wall time: see zone-clock.ts for the crossing. */
export type Quantum = number & { readonly unit: "quarter-hours since 1970-01-01T00:00Z" };

/** Vouches for a whole number that was stored, sent or counted as quanta. */
export const quantum = (count: number): Quantum => count as Quantum;

/** The quantum that an instant lies in. @example quantumAt(899_999) // 0 */
export const quantumAt = (instant: number): Quantum => quantum(Math.floor(instant / QUANTUM_MS));

/** The first quantum that starts at an instant or after it. @example quantumFrom(1) // 1 */
export const quantumFrom = (instant: number): Quantum => quantum(Math.ceil(instant / QUANTUM_MS));

/** Epoch milliseconds at which a quantum starts. @example instantOfQuantum(quantum(1)) // 900_000 */
export const instantOfQuantum = (at: Quantum): number => at * QUANTUM_MS;

/** @example plusQuanta(quantum(10), 4) // 14 */
export const plusQuanta = (at: Quantum, count: number): Quantum => quantum(at + count);

/** How many quanta a job of so many minutes fills; a begun quantum counts. @example quantaFor(60) // 4 */
export const quantaFor = (minutes: number): number => Math.ceil(minutes / QUANTUM_MINUTES);
