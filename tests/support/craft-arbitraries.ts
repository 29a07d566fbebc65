import * as fc from "fast-check";
import {
  type Answers,
  type RememberedService,
  RIDING,
  SYMPTOMS,
  UNIT_FAMILIES,
  WASHERS,
} from "#shared/craft/vocabulary.ts";
import { FORGOTTEN, NEVER } from "#tests/support/a-craft.ts";

/** Most hours a year that an owner is taken to ride (default of this project). */
const PACE = 150;
const DAY_MS = 86_400_000;
const DAYS_PER_YEAR = 365.25;

/** Hours at which some rule changes its mind, and their neighbours. */
const EDGES = [25, 30, 50, 75, 100, 200].flatMap((hours) => [hours - 0.1, hours, hours + 0.1]);

const dayOf = (date: string): number => Date.parse(`${date}T00:00:00Z`) / DAY_MS;
const dateOf = (day: number): string => new Date(day * DAY_MS).toISOString().slice(0, 10);

/** A craft of which everything is known, on a day, with a history that can have happened. */
export type TrueCraft = { readonly answers: Answers; readonly onDate: string };

/** Hours ridden in some days: anything from none to the fastest pace, often on the edge of a rule. */
const hoursIn = (days: number): fc.Arbitrary<number> => {
  const most = Math.floor((days / DAYS_PER_YEAR) * PACE * 10) / 10;
  const edges = EDGES.filter((hours) => hours <= most);
  const any = fc.integer({ min: 0, max: Math.round(most * 10) }).map((tenths) => tenths / 10);
  return edges.length === 0 ? any : fc.oneof(any, fc.constantFrom(...edges));
};

type Moment = { readonly day: number; readonly hours: number };

/** Any day of a craft's life, the last year most often. */
const dayBetween = (born: number, today: number): fc.Arbitrary<number> =>
  fc.oneof(
    { weight: 1, arbitrary: fc.integer({ min: born, max: today }) },
    { weight: 3, arbitrary: fc.integer({ min: Math.max(born, today - 365), max: today }) },
  );

/** The two services and now, in the order in which they happened: days that follow each other, hours that only rise. */
const momentsFrom = (born: number, today: number): fc.Arbitrary<readonly [Moment, Moment, Moment]> =>
  fc
    .tuple(dayBetween(born, today), dayBetween(born, today))
    .map(([one, other]) => [Math.min(one, other), Math.max(one, other)] as const)
    .chain(([first, second]) =>
      fc.tuple(hoursIn(first - born), hoursIn(second - first), hoursIn(today - second)).map(([a, b, c]) => {
        const tenths = (hours: number) => Math.round(hours * 10) / 10;
        return [
          { day: first, hours: a },
          { day: second, hours: tenths(a + b) },
          { day: today, hours: tenths(a + b + c) },
        ] as const;
      }),
    );

const serviceAt = ({ day, hours }: Moment): RememberedService => ({
  when: "known",
  date: dateOf(day),
  engineHours: hours,
  slipLeftAt: null,
});

const HISTORIES = ["nothing", "rebuild", "slip", "rebuild, then slip", "slip, then rebuild"] as const;

function services(history: (typeof HISTORIES)[number], first: Moment, second: Moment) {
  const [early, late] = [serviceAt(first), serviceAt(second)];
  return {
    nothing: { lastRebuild: NEVER, lastSlipSet: NEVER },
    rebuild: { lastRebuild: late, lastSlipSet: NEVER },
    slip: { lastRebuild: NEVER, lastSlipSet: late },
    "rebuild, then slip": { lastRebuild: early, lastSlipSet: late },
    "slip, then rebuild": { lastRebuild: late, lastSlipSet: early },
  }[history];
}

/** Few symptoms, since one bad symptom drowns every other rule. */
const noticed = fc.oneof(
  { weight: 3, arbitrary: fc.constant([]) },
  { weight: 2, arbitrary: fc.constantFrom(["gradual-boost-loss" as const], ["limp-mode" as const]) },
  { weight: 1, arbitrary: fc.subarray([...SYMPTOMS]) },
);

const seldom = fc.nat(3).map((one) => one === 0);

/** Crafts as they truly are: plausible in the sense that every unknown's range holds the truth. */
export const trueCrafts: fc.Arbitrary<TrueCraft> = fc
  .record({
    today: fc.integer({ min: dayOf("2026-01-01"), max: dayOf("2028-12-31") }),
    age: fc.oneof(fc.constantFrom(0, 1, 2, 3), fc.integer({ min: 0, max: 20 })),
  })
  .chain(({ today, age }) => {
    const builtYear = Number(dateOf(today).slice(0, 4)) - age;
    return fc
      .record({
        unitFamily: fc.constantFrom(...UNIT_FAMILIES.slice(0, 2)),
        riding: fc.constantFrom("easy" as const, "mixed" as const, "hard" as const),
        engine: seldom,
        charger: seldom,
        changedSinceSlip: seldom,
        ceramic: fc.boolean(),
        symptoms: noticed,
        notLooked: fc.boolean(),
        history: fc.constantFrom(...HISTORIES),
        moments: momentsFrom(dayOf(`${builtYear}-01-01`), today),
      })
      .map(({ engine, charger, changedSinceSlip, ceramic, history, moments: [first, second, now], ...rest }) => {
        const done = services(history, first, second);
        const early = rest.unitFamily === "shim-stack" && builtYear <= 2010 && done.lastRebuild.when === "never";
        return {
          onDate: dateOf(today),
          answers: {
            ...rest,
            ...done,
            builtYear,
            engineHours: now.hours,
            mods: { engine, charger, changedSinceSlip, boostPsi: charger ? 15 : null },
            washers: early && ceramic ? "ceramic" : "metal",
          },
        };
      });
  });

/** Everything an owner can be unsure of, each with how the answers look when it is. */
export const FORGETTING: Readonly<Record<string, (answers: Answers) => Answers>> = {
  unitFamily: (it) => ({ ...it, unitFamily: "unknown" }),
  builtYear: (it) => ({ ...it, builtYear: null }),
  engineHours: (it) => ({ ...it, engineHours: null }),
  riding: (it) => ({ ...it, riding: "unknown" }),
  washers: (it) => ({ ...it, washers: "unknown" }),
  "mods.engine": (it) => ({ ...it, mods: { ...it.mods, engine: null } }),
  "mods.charger": (it) => ({ ...it, mods: { ...it.mods, charger: null } }),
  "mods.changedSinceSlip": (it) => ({ ...it, mods: { ...it.mods, changedSinceSlip: null } }),
  lastRebuild: (it) => ({ ...it, lastRebuild: FORGOTTEN }),
  "lastRebuild.date": (it) => ({ ...it, lastRebuild: { ...it.lastRebuild, date: null } }),
  "lastRebuild.engineHours": (it) => ({ ...it, lastRebuild: { ...it.lastRebuild, engineHours: null } }),
  lastSlipSet: (it) => ({ ...it, lastSlipSet: FORGOTTEN }),
  "lastSlipSet.date": (it) => ({ ...it, lastSlipSet: { ...it.lastSlipSet, date: null } }),
  "lastSlipSet.engineHours": (it) => ({ ...it, lastSlipSet: { ...it.lastSlipSet, engineHours: null } }),
};

export const forgettable = fc.constantFrom(...Object.keys(FORGETTING));
export const forget = (answers: Answers, ...what: readonly string[]): Answers =>
  what.reduce((it, one) => FORGETTING[one]!(it), answers);

/** What an owner may answer: a true craft, some of it forgotten. */
export const plausibleCrafts: fc.Arbitrary<TrueCraft> = fc
  .tuple(trueCrafts, fc.uniqueArray(forgettable, { maxLength: 6 }))
  .map(([{ answers, onDate }, forgotten]) => ({ onDate, answers: forget(answers, ...forgotten) }));

const anyService: fc.Arbitrary<RememberedService> = fc.oneof(
  fc.constantFrom(NEVER, FORGOTTEN),
  fc.record({
    when: fc.constant("known" as const),
    date: fc.option(fc.integer({ min: dayOf("2008-01-01"), max: dayOf("2026-12-31") }).map(dateOf)),
    engineHours: fc.option(fc.integer({ min: 0, max: 400 })),
    slipLeftAt: fc.constant(null),
  }),
);

const yesNoNull = fc.constantFrom(true, false, null);

/** Anything the schema of the answers takes, whether or not it can have happened. */
export const uncheckedCrafts: fc.Arbitrary<TrueCraft> = fc.record({
  onDate: fc.integer({ min: dayOf("2027-01-01"), max: dayOf("2028-12-31") }).map(dateOf),
  answers: fc.record({
    unitFamily: fc.constantFrom(...UNIT_FAMILIES),
    builtYear: fc.option(fc.integer({ min: 2005, max: 2028 })),
    engineHours: fc.option(fc.integer({ min: 0, max: 500 })),
    riding: fc.constantFrom(...RIDING),
    mods: fc.record({
      engine: yesNoNull,
      charger: yesNoNull,
      boostPsi: fc.option(fc.integer({ min: 1, max: 30 })),
      changedSinceSlip: yesNoNull,
    }),
    lastRebuild: anyService,
    lastSlipSet: anyService,
    washers: fc.constantFrom(...WASHERS),
    symptoms: noticed,
    notLooked: fc.boolean(),
  }),
});
