import * as fc from "fast-check";
import { judge } from "#shared/triage/judge.ts";
import { TRIAGE_DEFAULTS } from "#shared/triage/triage-settings.ts";
import { wouldChange } from "#shared/triage/would-change.ts";
import { engineTriage } from "#tests/speed/engine-triage.ts";
import { asRatio, type Measured, perSecond } from "#tests/speed/measured.ts";
import { medianOf, runInTurn } from "#tests/speed/rounds.ts";
import { plausibleCrafts, type TrueCraft } from "#tests/support/craft-arbitraries.ts";
import { plainTriage } from "#tests/support/plain-triage.ts";

const SEED = 20_270_501;
const CASES = 2000;
const CASES_A_ROUND = 100;
const PASSES = 30;

/** Decisions a second of our triage, against the same decisions written by hand, one `if` after the other. */
export async function measureTriage(): Promise<readonly Measured[]> {
  const cases: readonly TrueCraft[] = fc.sample(plausibleCrafts, { numRuns: CASES, seed: SEED }).map(asStored);
  const parts = partsOf(cases, CASES_A_ROUND);
  const library = engineTriage();
  for (const it of cases) mustAgree(it);
  for (const it of parts[0] ?? []) await mustAgreeWithLibrary(it, library);
  const race = await runInTurn(
    {
      plain: eachOf(parts, ({ answers, onDate }) => plainTriage(answers, onDate).reasons.length),
      ours: eachOf(parts, ({ answers, onDate }) => judge(answers, onDate, TRIAGE_DEFAULTS).reasons.length),
    },
    { rounds: PASSES * parts.length, warmUp: 10 * parts.length },
  );
  const apart = await runInTurn(
    {
      library: async () => {
        for (const { answers, onDate } of parts[0] ?? []) await library(answers, onDate);
      },
      wouldChange: eachOf(parts, ({ answers, onDate }) => wouldChange(answers, onDate, TRIAGE_DEFAULTS).length),
    },
    { rounds: parts.length, warmUp: parts.length },
  );
  const rate = (seconds: number) => perSecond(CASES_A_ROUND / seconds);
  return [
    asRatio(
      "triage: decisions/s, rule table against hand-written ifs",
      medianOf(race, ({ plain, ours }) => plain / ours),
      { least: 0.5 },
    ),
    { what: "  the rule table", measured: rate(medianOf(race, ({ ours }) => ours)) },
    { what: "  hand-written ifs", measured: rate(medianOf(race, ({ plain }) => plain)) },
    { what: "  a general-purpose rules library, rules alone", measured: rate(medianOf(apart, (it) => it.library)) },
    { what: "  the rule table, with what would change it", measured: rate(medianOf(apart, (it) => it.wouldChange)) },
  ];
}

/** As they come from a request or a row: plain objects with their fields in one order. */
const asStored = (it: TrueCraft): TrueCraft => JSON.parse(JSON.stringify(it)) as TrueCraft;

function partsOf<Item>(items: readonly Item[], size: number): readonly (readonly Item[])[] {
  return Array.from({ length: items.length / size }, (_, index) => items.slice(index * size, (index + 1) * size));
}

/** Looks at what came out, so that no compiler may leave the work undone. */
function eachOf(parts: readonly (readonly TrueCraft[])[], work: (it: TrueCraft) => number): (round: number) => void {
  return (round) => {
    let sum = 0;
    for (const it of parts[round % parts.length] ?? []) sum += work(it);
    if (Number.isNaN(sum)) throw new Error("Nothing was counted.");
  };
}

/** A race counts only between those who do the same work. */
function mustAgree({ answers, onDate }: TrueCraft): void {
  const [ours, plain] = [judge(answers, onDate, TRIAGE_DEFAULTS), plainTriage(answers, onDate)].map(
    ({ verdict, reasons, advice, engineDebris, due }) =>
      [verdict, engineDebris, due.kind, due.by, ...[...reasons, ...advice].map(({ rule }) => rule)].join(),
  );
  if (ours !== plain) throw new Error(`On ${onDate} ${JSON.stringify(answers)} is ${ours}, by hand ${plain}`);
}

async function mustAgreeWithLibrary({ answers, onDate }: TrueCraft, library: ReturnType<typeof engineTriage>) {
  const [ours, theirs] = [judge(answers, onDate, TRIAGE_DEFAULTS), await library(answers, onDate)];
  const rules = ours.reasons.map(({ rule }) => rule).join();
  if (rules !== theirs.join()) throw new Error(`The library finds ${theirs.join()} where we find ${rules}`);
}
