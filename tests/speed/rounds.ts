import { performance } from "node:perf_hooks";

/** Each contestant's seconds for one round. */
export type Round<Name extends string> = Readonly<Record<Name, number>>;

type Work = (round: number) => void | Promise<void>;

/**
 * Runs the contestants in turn, round after round, so that whatever else the machine does falls on all of them.
 * The first rounds warm up and are not counted. Keep them short: one that outlasts its slice of a
 * busy processor is timed with the others' work in it.
 */
export async function runInTurn<Name extends string>(
  contestants: Readonly<Record<Name, Work>>,
  { rounds, warmUp }: { readonly rounds: number; readonly warmUp: number },
): Promise<readonly Round<Name>[]> {
  const names = Object.keys(contestants) as Name[];
  const counted: Round<Name>[] = [];
  for (let round = 0; round < warmUp + rounds; round += 1) {
    const seconds = {} as Record<Name, number>;
    for (const name of names) {
      const start = performance.now();
      await contestants[name](round);
      seconds[name] = (performance.now() - start) / 1000;
    }
    if (round >= warmUp) counted.push(seconds);
  }
  return counted;
}

/** @example median([3, 1, 2]) // 2 */
export function median(values: readonly number[]): number {
  const sorted = values.toSorted((one, other) => one - other);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] ?? Number.NaN;
  return sorted.length % 2 === 1 ? upper : (upper + (sorted[middle - 1] ?? Number.NaN)) / 2;
}

/** The median over the rounds of something worked out from each round by itself. */
export const medianOf = <Name extends string>(
  rounds: readonly Round<Name>[],
  figure: (round: Round<Name>) => number,
): number => median(rounds.map(figure));
