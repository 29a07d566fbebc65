import type { SheetStepId } from "#shared/job/sheet-entry.ts";
import { entryText } from "#shared/messages/sheet-entry-words.ts";
import { SHEET } from "#shared/messages/sheet-page-words.ts";
import { timeText } from "#shared/messages/time-words.ts";
import type { SheetModel } from "#src/bench/sheet/sheet-model.ts";

type EarlierProps = { readonly model: SheetModel; readonly step: SheetStepId };

/** What was written at a step before its newest entry, newest first, with who wrote it and when. */
export function EarlierEntries({ model: { view, job, front }, step }: EarlierProps) {
  const earlier = view.earlier.filter((it) => it.step === step).toReversed();
  if (earlier.length === 0) return null;
  return (
    <details class="earlier">
      <summary>{SHEET.earlier(earlier.length)}</summary>
      <ul>
        {earlier.map(({ by, at, entry }) => (
          <li>
            <span class="faint">{SHEET.by(by, timeText(at, job.booking.time.zone, front.locale))}</span>
            <br />
            {entryText(entry)}
          </li>
        ))}
      </ul>
    </details>
  );
}
