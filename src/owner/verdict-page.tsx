import type { Symptom, UnitFamily } from "#shared/craft/vocabulary.ts";
import type { Draft, QuestionId } from "#shared/intake/draft.ts";
import { PAGE_WORDS } from "#shared/messages/page-words.ts";
import { timeText } from "#shared/messages/time-words.ts";
import { VERDICT_WORDS } from "#shared/messages/verdict-words.ts";
import type { JobPlan } from "#shared/shop/job-plan.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import type { WouldChange } from "#shared/triage/would-change.ts";
import { PageFrame, telLink } from "#src/http/page-frame.tsx";
import { Cautions } from "#src/owner/cautions.tsx";
import { ClutchDrawing, suspectNames, suspectSources } from "#src/owner/clutch-drawing.tsx";
import { Dropped } from "#src/owner/dropped.tsx";
import type { FreeTime } from "#src/owner/free-time.ts";
import { Offers } from "#src/owner/offers.tsx";
import { Tag } from "#src/owner/tag.tsx";
import { FindOut, PriceCard, ServiceClock, VerdictCard } from "#src/owner/verdict-card.tsx";

type VerdictPageProps = {
  readonly front: ShopSettings["front"];
  readonly draft: Draft;
  readonly plan: JobPlan;
  readonly changes: readonly WouldChange[];
  readonly dropped: readonly QuestionId[];
  readonly free: FreeTime;
  /** True where this conversation has led to a job already. */
  readonly booked: boolean;
  readonly wish: string;
  /** Why the last pick could not be held. */
  readonly notice?: string;
};

/** Everything the owner wants to know before giving a name. */
export function VerdictPage(props: VerdictPageProps) {
  const { front, draft, plan, changes, dropped, free, booked, wish, notice } = props;
  const { judgement } = plan;
  const isStop = judgement.verdict === "stop-riding";
  const noticed = draft.symptoms?.noticed ?? [];
  return (
    <PageFrame title={VERDICT_WORDS[judgement.verdict].title} front={front} kind="owner">
      <main id="main" class="beside">
        <Tag draft={draft} />
        <div class="talk">
          {notice !== undefined && (
            <p class="notice" role="alert">
              {notice}
            </p>
          )}
          <Dropped dropped={dropped} />
          <VerdictCard judgement={judgement}>
            {isStop && (
              <p class="actions">
                <a class="button" href={telLink(front.phone)}>
                  {PAGE_WORDS.callNow(front.phone)}
                </a>
              </p>
            )}
          </VerdictCard>
          {noticed.length > 0 && <Suspects family={draft.unitFamily ?? "unknown"} symptoms={noticed} />}
          <ServiceClock clocks={plan.clocks} locale={front.locale} />
          <FindOut changes={changes} />
          <PriceCard plan={plan} locale={front.locale} />
          <h2>{PAGE_WORDS.hold}</h2>
          {booked ? (
            <p class="notice">{PAGE_WORDS.alreadyBooked}</p>
          ) : (
            <FreeTimes free={free} front={front} wish={wish} />
          )}
          {judgement.verdict === "not-due" && plan.clocks.rebuildBy !== null && (
            <>
              <h2>{PAGE_WORDS.orReminded}</h2>
              <p>
                <a href="/verdict/due.ics">{PAGE_WORDS.dueInCalendar}</a>
              </p>
            </>
          )}
          <Cautions verdict={judgement.verdict} />
          <form method="post" action="/intake/start-over">
            <button type="submit" class="quiet">
              {PAGE_WORDS.startOver}
            </button>
          </form>
        </div>
      </main>
    </PageFrame>
  );
}

type FreeTimesProps = { readonly free: FreeTime; readonly front: ShopSettings["front"]; readonly wish: string };

const FreeTimes = ({ free, front, wish }: FreeTimesProps) => (
  <>
    <p>{PAGE_WORDS.holdHow}</p>
    <Offers
      offers={free.offers}
      locale={front.locale}
      action="/verdict/hold"
      button={PAGE_WORDS.holdThis}
      wish={wish}
    />
    <p class="faint">{PAGE_WORDS.asOf(timeText(free.asOf, free.zone, front.locale))}</p>
  </>
);

/** What the symptoms point at, drawn and named; nothing where they point at no part. */
function Suspects({ family, symptoms }: { readonly family: UnitFamily; readonly symptoms: readonly Symptom[] }) {
  const names = suspectNames(symptoms);
  if (names.length === 0) return null;
  return (
    <figure>
      <ClutchDrawing family={family} symptoms={symptoms} label={PAGE_WORDS.suspects} />
      <figcaption>
        {PAGE_WORDS.inkedIn(names)} <small>({suspectSources(symptoms).join("; ")})</small>
      </figcaption>
    </figure>
  );
}
