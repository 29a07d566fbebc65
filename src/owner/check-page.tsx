import { codeText, type RecordCode } from "#shared/job/record-code.ts";
import type { CodeStanding, RecordGlimpse } from "#shared/job/record-standing.ts";
import { CHECK, STANDING_WORDS } from "#shared/messages/check-words.ts";
import { OPTION_WORDS } from "#shared/messages/option-words.ts";
import { dateText } from "#shared/messages/time-words.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { PageFrame } from "#src/http/page-frame.tsx";

type Front = { readonly front: ShopSettings["front"] };
type CheckPageProps = Front & { readonly typed?: string; readonly problem?: string };

/** The field for a code, with what is wrong with the one that was typed. */
export const CheckPage = ({ front, typed = "", problem }: CheckPageProps) => (
  <PageFrame title={CHECK.title} front={front} kind="owner">
    <main id="main">
      <div class="sheet">
        <h1 tabindex={-1}>{CHECK.title}</h1>
        <form method="get" action="/check" data-plain>
          <div class="field">
            <label for="code">{CHECK.code}</label>
            <small id="code.hint">{CHECK.how}</small>
            {problem !== undefined && (
              <p class="problem" id="code.problem" role="alert">
                {problem}
              </p>
            )}
            <input
              id="code"
              name="code"
              class="code"
              type="text"
              required
              maxlength={80}
              autocomplete="off"
              autocapitalize="characters"
              spellcheck={false}
              value={typed}
              aria-describedby={problem === undefined ? "code.hint" : "code.hint code.problem"}
              aria-invalid={problem === undefined ? undefined : "true"}
            />
          </div>
          <button type="submit">{CHECK.check}</button>
        </form>
      </div>
    </main>
  </PageFrame>
);

type StandingPageProps = Front & { readonly code: RecordCode; readonly standing: CodeStanding };

/** What a code's record is worth, and the little to lay beside the paper. */
export function StandingPage({ front, code, standing }: StandingPageProps) {
  const later = standing.is === "damaged" && standing.where === "later";
  const { title, says } = STANDING_WORDS[later ? "damaged-later" : standing.is];
  return (
    <PageFrame title={title} front={front} kind="owner">
      <main id="main">
        <div class="sheet">
          <h1 tabindex={-1}>{title}</h1>
          <p class="code">{codeText(code)}</p>
          <p>{says}</p>
          {standing.is === "corrected" && (
            <p>
              {CHECK.newer}: <a href={`/check/${standing.by}`}>{standing.by}</a>
            </p>
          )}
          {"glimpse" in standing && <Glimpse glimpse={standing.glimpse} locale={front.locale} />}
          {standing.is === "genuine" && (
            <>
              <h2>{CHECK.provesTitle}</h2>
              <p>{CHECK.proves}</p>
            </>
          )}
          <p class="actions">
            <a class="button quiet" href="/check">
              {CHECK.another}
            </a>
          </p>
        </div>
      </main>
    </PageFrame>
  );
}

const Glimpse = ({ glimpse, locale }: { readonly glimpse: RecordGlimpse; readonly locale: string }) => (
  <>
    <dl class="facts">
      <dt>{CHECK.date}</dt>
      <dd>{dateText(glimpse.date, locale)}</dd>
      <dt>{CHECK.family}</dt>
      <dd>{OPTION_WORDS.unitFamily[glimpse.family]}</dd>
      <dt>{CHECK.serial}</dt>
      <dd>{glimpse.serialEnd ?? CHECK.nothing}</dd>
      <dt>{CHECK.slip}</dt>
      <dd>{glimpse.slipLeft === null ? CHECK.nothing : CHECK.slipText(glimpse.slipLeft)}</dd>
    </dl>
    <p>{CHECK.compare}</p>
  </>
);
