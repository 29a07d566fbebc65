import { accept } from "#shared/basics/outcome.ts";
import { FRONT_WORDS } from "#shared/messages/shop-settings-words.ts";
import type { SettingField } from "#src/bench/settings/setting-field.ts";
import { linesOf, readText } from "#src/bench/settings/setting-text.ts";

const group = "front";
const read = readText;

/** Who the shop is, and where units are sent. */
export const FRONT_FIELDS: readonly SettingField[] = [
  { name: "front.name", group, ...FRONT_WORDS.name, read, write: ({ front }) => front.name },
  {
    name: "front.shipTo.lines",
    group,
    ...FRONT_WORDS.lines,
    manyLines: true,
    read: (text) => accept(linesOf(text)),
    write: ({ front }) => front.shipTo.lines.join("\n"),
  },
  {
    name: "front.shipTo.postcode",
    group,
    ...FRONT_WORDS.postcode,
    read,
    write: ({ front }) => front.shipTo.postcode,
  },
  { name: "front.shipTo.region", group, ...FRONT_WORDS.region, read, write: ({ front }) => front.shipTo.region },
  {
    name: "front.shipTo.country",
    group,
    ...FRONT_WORDS.shipToCountry,
    read,
    write: ({ front }) => front.shipTo.country,
  },
  { name: "front.phone", group, ...FRONT_WORDS.phone, read, write: ({ front }) => front.phone },
  { name: "front.email", group, ...FRONT_WORDS.email, read, write: ({ front }) => front.email },
  { name: "front.country", group, ...FRONT_WORDS.country, read, write: ({ front }) => front.country },
  { name: "front.locale", group, ...FRONT_WORDS.locale, read, write: ({ front }) => front.locale },
];
