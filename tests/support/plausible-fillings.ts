import { type Answers, type RememberedService, RIDING, UNIT_FAMILIES } from "#shared/craft/vocabulary.ts";
import { NEVER } from "#tests/support/a-craft.ts";

/**
 * What an unknown answer may plausibly be, written out value by value, with no help from the code under test: hours
 * and dates of which no more than 150 h a year follow, services that do not contradict each other, nothing in the future.
 */
const PACE = 150;
const DAY_MS = 86_400_000;
const DAYS_PER_YEAR = 365.25;
const OLDEST_YEAR = 1985;

const dayOf = (date: string): number => Date.parse(`${date}T00:00:00Z`) / DAY_MS;
const dateOf = (day: number): string => new Date(day * DAY_MS).toISOString().slice(0, 10);
const newYear = (year: number): number => dayOf(`${year}-01-01`);

export type Unknown = { readonly answer: string; readonly fillings: readonly Answers[] };

/** Each unknown of the answers by its name, with a dense sample of its plausible fillings. */
export function plausibleFillings(answers: Answers, onDate: string): readonly Unknown[] {
  const today = dayOf(onDate);
  const { mods, lastRebuild, lastSlipSet } = answers;
  const known: readonly (readonly [string, boolean, () => readonly Answers[]])[] = [
    [
      "unitFamily",
      answers.unitFamily === "unknown",
      () => UNIT_FAMILIES.slice(0, 2).map((it) => ({ ...answers, unitFamily: it })),
    ],
    [
      "builtYear",
      answers.builtYear === null,
      () => years(answers, onDate).map((it) => ({ ...answers, builtYear: it })),
    ],
    [
      "engineHours",
      answers.engineHours === null,
      () => hoursNow(answers, today).map((it) => ({ ...answers, engineHours: it })),
    ],
    ["riding", answers.riding === "unknown", () => RIDING.slice(0, 3).map((it) => ({ ...answers, riding: it }))],
    ...(["engine", "charger", "changedSinceSlip"] as const).map(
      (mod) =>
        [
          `mods.${mod}`,
          mods[mod] === null,
          () => [true, false].map((it) => ({ ...answers, mods: { ...mods, [mod]: it } })),
        ] as const,
    ),
    ["washers", answers.washers === "unknown", () => [{ ...answers, washers: "metal" }]],
    ...serviceUnknowns("lastRebuild", lastRebuild, answers, today),
    ...serviceUnknowns("lastSlipSet", lastSlipSet, answers, today),
  ];
  return known.flatMap(([answer, isUnknown, fillings]) => (isUnknown ? [{ answer, fillings: fillings() }] : []));
}

/** Every year up to the one in which the first service, or today, lies. */
function years({ lastRebuild, lastSlipSet }: Answers, onDate: string): readonly number[] {
  const newest = [onDate, lastRebuild.date, lastSlipSet.date].filter((date) => date !== null).sort()[0]!;
  return range(OLDEST_YEAR, Number(newest.slice(0, 4)), 1);
}

/** From the last date at which the hours are known, up to 150 a year. */
function hoursNow({ builtYear, lastRebuild, lastSlipSet }: Answers, today: number): readonly number[] {
  const services = [lastRebuild, lastSlipSet];
  const least = Math.max(0, ...services.map((service) => service.engineHours ?? 0));
  const readings = services
    .flatMap(({ date, engineHours }) =>
      date && engineHours !== null ? [{ day: dayOf(date), hours: engineHours }] : [],
    )
    .concat(builtYear === null ? [] : [{ day: newYear(builtYear), hours: 0 }])
    .sort((one, other) => other.day - one.day || other.hours - one.hours);
  const [last] = readings;
  const most = last === undefined ? least + 1000 : last.hours + mostRidden(today - last.day);
  const edges = services.map((service) => (service.engineHours ?? 0) + 25);
  return [...range(least, most, Math.max(1, (most - least) / 60)), most, ...edges].filter(
    (it) => it >= least && it <= most,
  );
}

const SERVICES = { lastRebuild: "lastSlipSet", lastSlipSet: "lastRebuild" } as const;

function serviceUnknowns(name: keyof typeof SERVICES, service: RememberedService, answers: Answers, today: number) {
  const other = answers[SERVICES[name]];
  const born = answers.builtYear === null ? today - 4000 : newYear(answers.builtYear);
  const fill = (date: string | null, engineHours: number | null): Answers => ({
    ...answers,
    [name]: { ...service, when: "known", date, engineHours },
  });
  const pairs = (days: readonly number[], hours: readonly number[]) =>
    days
      .flatMap((day) => hours.map((it) => [day, it] as const))
      .filter(([day, it]) => fits(day, it, answers, other, today));
  const anyHours = () => serviceHours(answers, other, today);
  const anyDay = (hours: readonly number[]) => serviceDays(hours, born, answers, other, today);
  const isKnown = service.when === "known";
  return [
    [
      name,
      service.when === "unknown",
      () => [
        { ...answers, [name]: NEVER },
        ...pairs(anyDay(anyHours()), anyHours()).map(([day, hours]) => fill(dateOf(day), hours)),
      ],
    ],
    [
      `${name}.date`,
      isKnown && service.date === null,
      () =>
        service.engineHours === null
          ? anyDay([]).map((day) => fill(dateOf(day), null))
          : pairs(anyDay([service.engineHours]), [service.engineHours]).map(([day, hours]) => fill(dateOf(day), hours)),
    ],
    [
      `${name}.engineHours`,
      isKnown && service.engineHours === null,
      () =>
        service.date === null
          ? anyHours().map((hours) => fill(null, hours))
          : pairs(
              [dayOf(service.date)],
              [...anyHours(), ...atPace(service.date, answers.engineHours ?? other.engineHours ?? 0, today)],
            ).map(([, hours]) => fill(service.date, hours)),
    ],
  ] as const;
}

/** No more hours after it than the pace allows; the later service at the higher hours, two on one day at the same. */
function fits(day: number, hours: number, { engineHours }: Answers, other: RememberedService, today: number): boolean {
  if (hours < 0 || hours > (engineHours ?? Infinity)) return false;
  if (engineHours !== null && engineHours - hours > mostRidden(today - day) + 1e-9) return false;
  if (other.date === null || other.engineHours === null) return true;
  const [days, later] = [day - dayOf(other.date), hours - other.engineHours];
  return days === 0 ? later === 0 : days * later >= 0;
}

function serviceHours(answers: Answers, other: RememberedService, today: number): readonly number[] {
  const { engineHours } = answers;
  const most = engineHours ?? Math.max(0, ...hoursNow(answers, today));
  const edges = [0, 25, 30, 50, 75, 100, 200].map((hours) => Math.round((most - hours) * 10) / 10);
  return [...range(0, most, Math.max(1, most / 16)), most, ...edges, other.engineHours ?? 0].filter((it) => it >= 0);
}

function serviceDays(
  hours: readonly number[],
  born: number,
  answers: Answers,
  other: RememberedService,
  today: number,
) {
  const { engineHours } = answers;
  const latest = hours.map((it) => today - Math.ceil((((engineHours ?? it) - it) / PACE) * DAYS_PER_YEAR - 1e-9));
  const nearOther = other.date === null ? [] : [-1, 0, 1].map((days) => dayOf(other.date!) + days);
  const all = [...range(born, today, Math.max(1, (today - born) / 16)).map(Math.floor), today, ...latest, ...nearOther];
  return [...new Set(all)].filter((day) => day >= born && day <= today);
}

/** The hours from which the pace just leads to the hours now, or to those at the other service. */
const atPace = (date: string, hoursThen: number, today: number): readonly number[] => [
  Math.max(0, hoursThen - mostRidden(today - dayOf(date))),
];

const mostRidden = (days: number): number => Math.max(0, (days / DAYS_PER_YEAR) * PACE);

const range = (from: number, to: number, step: number): readonly number[] =>
  Array.from({ length: Math.max(0, Math.floor((to - from) / step) + 1) }, (_, index) => from + index * step);
