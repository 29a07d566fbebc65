import type { SheetEntry, StoredEntry } from "#shared/job/sheet-entry.ts";
import type { FormFields } from "#shared/job/sheet-fields.ts";
import { entryText } from "#shared/messages/sheet-entry-words.ts";
import { CLASH, SHEET } from "#shared/messages/sheet-page-words.ts";
import { STEP_WORDS } from "#shared/messages/sheet-words.ts";
import { timeText } from "#shared/messages/time-words.ts";
import type { Job } from "#shared/shop/booking.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { ShopPage } from "#src/bench/shop-page.tsx";

type ClashProps = {
  readonly job: Job;
  readonly front: ShopSettings["front"];
  readonly mine: { readonly entry: SheetEntry; readonly fields: FormFields; readonly key: string };
  readonly theirs: StoredEntry;
};

/** Two entries for one step, side by side, and which of them is to stand. */
export function ClashPage({ job, front, mine, theirs }: ClashProps) {
  const { step } = theirs;
  const { title } = STEP_WORDS[step];
  const sheet = `/shop/jobs/${job.number}/sheet`;
  return (
    <ShopPage title={CLASH.title(title)} front={front}>
      <p role="alert">{CLASH.says}</p>
      <div class="clash">
        <section aria-labelledby="mine">
          <h2 id="mine">{CLASH.mine}</h2>
          <p>{entryText(mine.entry)}</p>
          <form method="post" action={`${sheet}/${step}`}>
            <input type="hidden" name="after" value={String(theirs.version)} />
            <input type="hidden" name="key" value={mine.key} />
            {Object.entries(mine.fields).flatMap(([name, values]) =>
              values.map((value) => <input type="hidden" name={name} value={value} />),
            )}
            <button type="submit">{CLASH.keepMine}</button>
          </form>
        </section>
        <section aria-labelledby="theirs">
          <h2 id="theirs">{CLASH.theirs}</h2>
          <p>{entryText(theirs.entry)}</p>
          <p class="faint">{SHEET.by(theirs.by, timeText(theirs.at, job.booking.time.zone, front.locale))}</p>
          <a class="button quiet" href={`${sheet}?step=${step}`}>
            {CLASH.keepTheirs}
          </a>
        </section>
      </div>
    </ShopPage>
  );
}
