import { Hono } from "hono";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import type { StaffVariables } from "#src/bench/session.ts";
import { readSettings, writeSettings } from "#src/bench/settings/settings-form.ts";
import { SettingsPage } from "#src/bench/settings/settings-page.tsx";
import { readForm } from "#src/http/read-form.ts";

/** The shop's settings, as one page saved as a whole. */
export function settingsRoutes(needs: BenchNeeds) {
  return new Hono<{ Variables: StaffVariables }>()
    .get("/", async (c) => {
      const current = await needs.shop.settings();
      const typed = writeSettings(current.settings);
      const saved = c.req.query("saved") !== undefined;
      return c.html(<SettingsPage current={current} ifVersion={current.version} typed={typed} saved={saved} />);
    })
    .post("/", async (c) => {
      const typed = await readForm(c);
      const ifVersion = versionIn(typed["ifVersion"]);
      const read = readSettings(typed);
      const saved = read.ok
        ? await needs.shop.saveSettings({ ifVersion, settings: read.value, staff: c.var.staff.name })
        : read;
      if (saved.ok) return c.redirect("/shop/settings?saved", 303);
      const current = await needs.shop.settings();
      if (!read.ok) {
        const page = { current, ifVersion, typed, problems: read.refusal };
        return c.html(<SettingsPage {...page} />, 422);
      }
      return c.html(<SettingsPage current={current} ifVersion={current.version} typed={typed} changedMeanwhile />, 409);
    });
}

/** A form without a version is older than any: it is refused as changed meanwhile. */
const versionIn = (text = ""): number => (/^\d{1,9}$/.test(text) ? Number(text) : 0);
