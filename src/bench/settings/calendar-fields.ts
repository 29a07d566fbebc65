import { BENCH_JOBS, WEEKDAYS } from "#shared/calendar/calendar-settings.ts";
import { CALENDAR_WORDS, WEEKDAY_WORDS } from "#shared/messages/shop-settings-words.ts";
import { WORK_WORDS } from "#shared/messages/verdict-words.ts";
import { numberField, type SettingField } from "#src/bench/settings/setting-field.ts";
import {
  benchesText,
  closuresText,
  openingsText,
  readBenches,
  readClosures,
  readOpenings,
  readText,
} from "#src/bench/settings/setting-text.ts";

const hours = { group: "hours" } as const;
const benches = { group: "benches" } as const;

/** When the benches are worked, and by which rules their time is offered. */
export const CALENDAR_FIELDS: readonly SettingField[] = [
  {
    ...hours,
    name: "calendar.zone",
    ...CALENDAR_WORDS.zone,
    read: readText,
    write: ({ calendar }) => calendar.zone,
  },
  ...WEEKDAYS.map(
    (weekday): SettingField => ({
      ...hours,
      name: `calendar.weekly.${weekday}`,
      label: WEEKDAY_WORDS[weekday],
      accepts: CALENDAR_WORDS.openings.accepts,
      read: readOpenings,
      write: ({ calendar }) => openingsText(calendar.weekly[weekday]),
    }),
  ),
  {
    ...hours,
    name: "calendar.closures",
    ...CALENDAR_WORDS.closures,
    manyLines: true,
    read: readClosures,
    write: ({ calendar }) => closuresText(calendar.closures),
  },
  {
    ...benches,
    name: "calendar.benches",
    ...CALENDAR_WORDS.benches,
    manyLines: true,
    read: readBenches,
    write: ({ calendar }) => benchesText(calendar.benches),
  },
  ...BENCH_JOBS.map((work) =>
    numberField({
      ...benches,
      name: `calendar.minutes.${work}`,
      label: `${CALENDAR_WORDS.minutes.label}: ${WORK_WORDS[work]}`,
      accepts: CALENDAR_WORDS.minutes.accepts,
      of: ({ calendar }) => calendar.minutes[work],
    }),
  ),
  numberField({
    ...benches,
    name: "calendar.leadWorkingDays.standard",
    ...CALENDAR_WORDS.leadStandard,
    of: ({ calendar }) => calendar.leadWorkingDays.standard,
  }),
  numberField({
    ...benches,
    name: "calendar.leadWorkingDays.urgent",
    ...CALENDAR_WORDS.leadUrgent,
    of: ({ calendar }) => calendar.leadWorkingDays.urgent,
  }),
  ...(["holdMinutes", "offerWindowDays", "changeUntilWorkingDays", "openHoldsPerSource"] as const).map((key) =>
    numberField({
      ...benches,
      name: `calendar.${key}`,
      ...CALENDAR_WORDS[key],
      of: ({ calendar }) => calendar[key],
    }),
  ),
];
