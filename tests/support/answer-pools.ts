import type { RememberedService } from "#shared/craft/vocabulary.ts";
import { answersFrom, type Draft, type QuestionId } from "#shared/intake/draft.ts";
import type { Circumstances } from "#shared/intake/questions.ts";
import { planJob } from "#shared/shop/job-plan.ts";
import { DEMO_SHOP } from "#shared/shop/shop-settings.ts";
import { done, FORGOTTEN, NEVER, ON_DATE } from "#tests/support/a-craft.ts";

export const NOW: Circumstances = { onDate: ON_DATE, ceramicUntilYear: DEMO_SHOP.triage.ceramicUntilYear };

export const ids = <Value extends object>(value: Value) => Object.keys(value) as (keyof Value)[];

const services: readonly RememberedService[] = [
  NEVER,
  FORGOTTEN,
  done(null, null),
  done("2027-05-01", null),
  done("2027-04-30", null),
  done("2027-01-01", null),
  done("2025-01-01", null),
  ...[0, 10, 39, 40, 100, 129, 130].flatMap((hours) => [
    done(null, hours),
    done("2027-05-01", hours),
    done("2027-03-01", hours),
    done("2025-03-01", hours),
  ]),
];

/** A few values of every answer: each choice, and numbers and dates on all sides of what matters. */
export const POOLS: {
  readonly [Id in QuestionId]-?: readonly Required<Draft>[Id][];
} = {
  symptoms: [
    { noticed: [], notLooked: false },
    { noticed: [], notLooked: true },
    { noticed: ["gradual-boost-loss"], notLooked: false },
    { noticed: ["limp-mode"], notLooked: false },
    { noticed: ["whine"], notLooked: false },
    { noticed: ["metal-in-oil"], notLooked: false },
  ],
  unitFamily: ["shim-stack", "set-nut", "unknown"],
  builtYear: [null, 2009, 2010, 2011, 2025, 2026, 2027],
  engineHours: [null, 0, 10, 40, 130],
  riding: ["easy", "mixed", "hard", "unknown"],
  engineModified: ["yes", "no", "unknown"],
  chargerModified: ["yes", "no", "unknown"],
  boost: [null, { value: 10, unit: "psi" }, { value: 1.1, unit: "bar" }, { value: 200, unit: "kPa" }],
  changedSinceSlip: ["yes", "no", "unknown"],
  lastRebuild: services,
  /** One more than any rebuild: where the hours now are not known, the slip may have been set at more. */
  lastSlipSet: [...services, done(null, 140)],
  washers: ["ceramic", "metal", "unknown"],
  washersAgain: ["ceramic", "metal", "unknown"],
};

/** All that an answer may bear on, as one text: verdict, due, what the bench sets, lays out and needs time for. */
export function bearingOf(draft: Draft): string {
  const { judgement, slip, parts, benchMinutes } = planJob(answersFrom(draft), NOW.onDate, DEMO_SHOP);
  const { target, band, setBeforeLock, cautions } = slip;
  const { verdict, due } = judgement;
  return JSON.stringify({ verdict, due, target, band, setBeforeLock, cautions, parts, benchMinutes });
}
