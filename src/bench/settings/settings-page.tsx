import {
  SETTING_GROUP_NOTES,
  SETTING_GROUPS,
  SETTINGS,
  type SettingGroup,
} from "#shared/messages/shop-settings-words.ts";
import { timeText } from "#shared/messages/time-words.ts";
import type { SettingsVersion } from "#shared/shop/shop-settings.ts";
import { LabelledField } from "#src/bench/labelled-field.tsx";
import { ProblemSummary } from "#src/bench/problem-summary.tsx";
import type { SettingField } from "#src/bench/settings/setting-field.ts";
import { SETTING_FIELDS, type SettingProblems, type TypedSettings } from "#src/bench/settings/settings-form.ts";
import { ShopPage } from "#src/bench/shop-page.tsx";

type SettingsPageProps = {
  readonly current: SettingsVersion;
  /** The version that what is typed would follow. */
  readonly ifVersion: number;
  readonly typed: TypedSettings;
  readonly problems?: SettingProblems;
  /** True where another save came first; what was typed would replace it. */
  readonly changedMeanwhile?: boolean;
  readonly saved?: boolean;
};

/** All that a shop can change, saved as a whole. */
export function SettingsPage({ current, ifVersion, typed, problems = {}, changedMeanwhile, saved }: SettingsPageProps) {
  const { front, calendar } = current.settings;
  return (
    <ShopPage title={SETTINGS.title} front={front}>
      {saved && (
        <p class="notice" role="status">
          {SETTINGS.saved(current.version)}
        </p>
      )}
      {changedMeanwhile && (
        <div class="problem" role="alert">
          <p>{SETTINGS.changedMeanwhile(current.version)}</p>
          <p>
            <a href="/shop/settings" target="_blank" rel="noopener">
              {SETTINGS.showNew}
            </a>
          </p>
        </div>
      )}
      <ProblemSummary
        title={SETTINGS.mend}
        says={SETTINGS.kept}
        problems={SETTING_FIELDS.flatMap(({ name, label }) => (problems[name] ? [{ field: name, label }] : []))}
      />
      <p>
        {SETTINGS.version(current.version, timeText(current.savedAt, calendar.zone, front.locale))} {SETTINGS.keeps}
      </p>
      <form method="post" action="/shop/settings" novalidate>
        <input type="hidden" name="ifVersion" value={String(ifVersion)} />
        {(Object.keys(SETTING_GROUPS) as SettingGroup[]).map((group) => (
          <fieldset>
            <legend>
              <h2>{SETTING_GROUPS[group]}</h2>
            </legend>
            {SETTING_GROUP_NOTES[group] && <p class="faint">{SETTING_GROUP_NOTES[group]}</p>}
            {SETTING_FIELDS.filter((field) => field.group === group).map((field) => (
              <Entry field={field} typed={typed[field.name] ?? ""} problem={problems[field.name]} />
            ))}
          </fieldset>
        ))}
        <p class="actions">
          <button type="submit">{SETTINGS.button}</button>
        </p>
      </form>
    </ShopPage>
  );
}

type EntryProps = { readonly field: SettingField; readonly typed: string; readonly problem: string | undefined };

function Entry({ field, typed, problem }: EntryProps) {
  const { name, label, accepts, source, manyLines } = field;
  const hints = [
    problem === undefined && accepts && SETTINGS.accepted(accepts),
    source && SETTINGS.source(source),
  ].filter(Boolean);
  return (
    <LabelledField
      name={name}
      label={label}
      hint={hints.length > 0 ? hints.join(" ") : undefined}
      problem={problem && SETTINGS.accepted(problem)}
      control={(links) =>
        manyLines ? (
          <textarea rows={4} autocomplete="off" {...links}>
            {typed}
          </textarea>
        ) : (
          <input type="text" autocomplete="off" value={typed} {...links} />
        )
      }
    />
  );
}
