import type { Child } from "hono/jsx";
import { quoteText } from "#shared/messages/money-words.ts";
import { PAGE_WORDS } from "#shared/messages/page-words.ts";
import { dateText } from "#shared/messages/time-words.ts";
import {
  DEBRIS_WORDS,
  FIND_OUT,
  NOT_INCLUDED,
  VERDICT_SHORT,
  VERDICT_WORDS,
  WORK_WORDS,
} from "#shared/messages/verdict-words.ts";
import type { JobPlan } from "#shared/shop/job-plan.ts";
import type { Clocks } from "#shared/triage/due.ts";
import type { Judgement, Reason } from "#shared/triage/judge.ts";
import type { WouldChange } from "#shared/triage/would-change.ts";

type CardProps = {
  readonly judgement: Judgement;
  /** What to do at once, before the reasons. */
  readonly children?: Child;
};

/** Whether to ride, what the unit needs and why. */
export function VerdictCard({ judgement, children }: CardProps) {
  const { verdict, reasons, advice, engineDebris } = judgement;
  const { title, means } = VERDICT_WORDS[verdict];
  return (
    <>
      <h1 tabindex={-1}>{title}</h1>
      <p>{means}</p>
      {advice.length > 0 && (
        <p class="notice">
          <strong>{advice.map(({ text }) => text).join(" ")}</strong>
        </p>
      )}
      {verdict === "stop-riding" && <p>{DEBRIS_WORDS[engineDebris]}</p>}
      {children}
      <h2>{PAGE_WORDS.why}</h2>
      <Reasons reasons={reasons} />
    </>
  );
}

const Reasons = ({ reasons }: { readonly reasons: readonly Reason[] }) => (
  <ul>
    {reasons.map(({ text, source }) => (
      <li>
        {text} <small>({source})</small>
      </li>
    ))}
  </ul>
);

/** The single answers that would make the verdict milder, each a link to its question. */
export function FindOut({ changes }: { readonly changes: readonly WouldChange[] }) {
  if (changes.length === 0) return null;
  return (
    <>
      <h2>{PAGE_WORDS.couldChange}</h2>
      <p>{PAGE_WORDS.couldChangeHow}</p>
      <ul>
        {changes.map(({ answer, to }) => (
          <li>
            <a href={`/intake/${questionFor(answer)}`}>{PAGE_WORDS.findOut(FIND_OUT[answer] ?? answer)}</a>
            {PAGE_WORDS.atBest(VERDICT_SHORT[to])}
          </li>
        ))}
      </ul>
    </>
  );
}

/** The question that asks for a field of the answers. */
function questionFor(answer: string): string {
  const byField: Readonly<Record<string, string>> = {
    "mods.engine": "engineModified",
    "mods.charger": "chargerModified",
    "mods.changedSinceSlip": "changedSinceSlip",
  };
  return byField[answer] ?? answer.split(".")[0] ?? answer;
}

/** What it costs and how long it takes, told before any name is asked. */
export function PriceCard({ plan, locale }: { readonly plan: JobPlan; readonly locale: string }) {
  const { quote } = plan;
  return (
    <>
      <h2>{PAGE_WORDS.costs}</h2>
      <dl class="facts">
        <dt>{WORK_WORDS[quote.work]}</dt>
        <dd>{quoteText(quote, locale)}</dd>
        <dt>{PAGE_WORDS.usualTime}</dt>
        <dd>{PAGE_WORDS.workingDays(quote.usualDays)}</dd>
      </dl>
      <p class="faint">
        {quote.from && `${PAGE_WORDS.maySayMore} `}
        {NOT_INCLUDED} <small>({PAGE_WORDS.pricesFrom})</small>
      </p>
    </>
  );
}

/** When each clock runs out, whatever the symptoms. */
export function ServiceClock({ clocks, locale }: { readonly clocks: Clocks; readonly locale: string }) {
  const { slipCheckAtHours, rebuildAtHours, rebuildBy } = clocks;
  const at = (hours: number | null) => (hours === null ? null : PAGE_WORDS.dueAt(Math.floor(hours)));
  return (
    <>
      <h2>{PAGE_WORDS.clock}</h2>
      <dl class="facts">
        <Limits of={PAGE_WORDS.slipCheckDue} limits={[at(slipCheckAtHours)]} />
        <Limits
          of={PAGE_WORDS.rebuildDue}
          limits={[rebuildBy === null ? null : PAGE_WORDS.dueBy(dateText(rebuildBy, locale)), at(rebuildAtHours)]}
        />
      </dl>
    </>
  );
}

function Limits({ of, limits }: { readonly of: string; readonly limits: readonly (string | null)[] }) {
  const known = limits.filter((limit) => limit !== null);
  if (known.length === 0) return null;
  return (
    <>
      <dt>{of}</dt>
      <dd>
        {known.join(PAGE_WORDS.or)}
        {known.length > 1 && PAGE_WORDS.whicheverFirst}
      </dd>
    </>
  );
}
