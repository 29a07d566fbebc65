import { ADVICE_ONLY, cautionsFor } from "#shared/messages/cautions.ts";
import { quoteText } from "#shared/messages/money-words.ts";
import { CALLER } from "#shared/messages/shop-caller-words.ts";
import { JOB } from "#shared/messages/shop-job-words.ts";
import { DEBRIS_WORDS, FIND_OUT, NOT_INCLUDED, VERDICT_SHORT, VERDICT_WORDS } from "#shared/messages/verdict-words.ts";
import { wouldChange } from "#shared/triage/would-change.ts";
import type { Call } from "#src/bench/caller/caller-call.ts";
import { FactList } from "#src/bench/fact-list.tsx";
import { Reasons } from "#src/bench/job-judgement.tsx";

/** What the caller is told, in the words that owners read. */
export function VerdictSummary({ call }: { readonly call: Call }) {
  const { judgement, quote } = call.plan;
  const { title, means } = VERDICT_WORDS[judgement.verdict];
  const changes = wouldChange(call.answers, call.onDate, call.settings.triage);
  return (
    <>
      <h2>{CALLER.verdictTitle}</h2>
      <p>
        <strong>{title}.</strong> {means} {judgement.verdict === "stop-riding" && DEBRIS_WORDS[judgement.engineDebris]}
      </p>
      <Reasons reasons={[...judgement.advice, ...judgement.reasons]} />
      {changes.length > 0 && (
        <>
          <p>{CALLER.askAgain}</p>
          <ul>
            {changes.map(({ answer, to }) => (
              <li>
                {FIND_OUT[answer] ?? answer}: {CALLER.atBest(VERDICT_SHORT[to])}
              </li>
            ))}
          </ul>
        </>
      )}
      <details>
        <summary>{CALLER.cautions}</summary>
        <ul>
          {cautionsFor(judgement.verdict).map(({ signal, text }) => (
            <li>
              <strong>{signal}:</strong> {text}
            </li>
          ))}
          <li>{ADVICE_ONLY}</li>
        </ul>
      </details>
      <FactList
        facts={[
          [CALLER.price, quoteText(quote, call.settings.front.locale)],
          [CALLER.usualDays, JOB.days(quote.usualDays)],
        ]}
      />
      <p class="faint">{NOT_INCLUDED}</p>
      <p class="actions">
        <a class="button quiet" href={`/shop/book/${call.token}/answers${call.here.query}`}>
          {CALLER.change}
        </a>
      </p>
    </>
  );
}
