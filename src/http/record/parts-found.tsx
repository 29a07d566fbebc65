import type { Service } from "#shared/job/record-schema.ts";
import { RECORD } from "#shared/messages/record-words.ts";
import { CONDITION_WORDS, PART_WORDS } from "#shared/messages/sheet-words.ts";

/** Each part as it was found, and what went in. */
export function PartsFound({ service: { found, parts } }: { readonly service: Service }) {
  return (
    <section>
      {found.parts.length > 0 && (
        <>
          <h2>{RECORD.parts}</h2>
          <ul class="parts">
            {found.parts.map(({ part, condition, note }) => (
              <li>
                {PART_WORDS[part]}: <b>{CONDITION_WORDS[condition].toLowerCase()}</b>
                {note !== null && ` (${note})`}
              </li>
            ))}
          </ul>
        </>
      )}
      <h2>{RECORD.partsUsed}</h2>
      <p>{parts.length === 0 ? RECORD.noParts : parts.map(({ name, count }) => `${name} × ${count}`).join(", ")}</p>
    </section>
  );
}
