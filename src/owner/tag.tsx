import type { Draft } from "#shared/intake/draft.ts";
import { stopAtOnce } from "#shared/intake/stop-at-once.ts";
import { TAG_STARTS, TAG_STOP } from "#shared/messages/owner-words.ts";
import { PAGE_WORDS } from "#shared/messages/page-words.ts";
import { tagLines } from "#shared/messages/tag-lines.ts";

/** The job tag on which the answers print, line by line. Touching a line opens its question again. */
export function Tag({ draft }: { readonly draft: Draft }) {
  const lines = tagLines(draft);
  return (
    <section class="tag" aria-label={PAGE_WORDS.yourTag}>
      <div class="eyelet"></div>
      <div class="tag-window">
        <div id="tag">
          <p class="faint" hidden={lines.length > 0}>
            {TAG_STARTS}
          </p>
          <ol class="tag-lines">
            {lines.map(({ id, label, value }) => (
              <li>
                <a href={`/intake/${id}`}>
                  <span>{label}</span>
                  <b>{value}</b>
                </a>
              </li>
            ))}
          </ol>
          <p class="stop" hidden={!stopAtOnce(draft)}>
            {TAG_STOP}
          </p>
        </div>
      </div>
    </section>
  );
}
