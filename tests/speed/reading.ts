import * as fc from "fast-check";
import { slipReading } from "#shared/slip/slip-reading.ts";
import { SLIP_DEFAULTS } from "#shared/slip/slip-settings.ts";
import { requests } from "#tests/slip/slip-readings.ts";
import { atMostMicroseconds, type Measured } from "#tests/speed/measured.ts";
import { medianOf, runInTurn } from "#tests/speed/rounds.ts";

const SEED = 20_270_501;
const CASES = 2000;
const CASES_A_ROUND = 50;
const PASSES = 20;
const MOST_MICROSECONDS = 50;

/** Time for one decision on readings, with its uncertainty, factor, probabilities and sentence. */
export async function measureReading(): Promise<readonly Measured[]> {
  // As they come from a request or a row: plain objects with their fields in one order.
  const sampled = fc.sample(requests, { numRuns: CASES, seed: SEED });
  const cases = JSON.parse(JSON.stringify(sampled)) as typeof sampled;
  const race = await runInTurn(
    {
      readings: (round) => {
        let inBand = 0;
        for (let index = 0; index < CASES_A_ROUND; index += 1) {
          const request = cases[(round * CASES_A_ROUND + index) % CASES];
          if (request !== undefined) inBand += slipReading(request, SLIP_DEFAULTS).probabilityInBand;
        }
        // Looks at what came out, so that no compiler may leave the work undone.
        if (Number.isNaN(inBand)) throw new Error("Nothing was decided.");
      },
    },
    { rounds: (PASSES * CASES) / CASES_A_ROUND, warmUp: (10 * CASES) / CASES_A_ROUND },
  );
  const seconds = medianOf(race, ({ readings }) => readings / CASES_A_ROUND);
  return [atMostMicroseconds("reading: three or more readings decided, one unit", seconds * 1e6, MOST_MICROSECONDS)];
}
