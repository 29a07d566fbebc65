import type { BenchFindings } from "#shared/job/bench-findings.ts";
import { ENGINE_WORDS, FINDINGS } from "#shared/messages/findings-words.ts";
import type { Reason } from "#shared/triage/judge.ts";

/** What the bench found, what it means for the engine, and what the owner does next, each with its source. */
export const FindingsView = ({ findings }: { readonly findings: BenchFindings }) => (
  <>
    <h2>{FINDINGS.title}</h2>
    <ul>
      {findings.reasons.map((reason) => (
        <Sourced reason={reason} />
      ))}
    </ul>
    <h2>{FINDINGS.engine}</h2>
    <p>
      <strong>{ENGINE_WORDS[findings.engineDebris]}</strong>
    </p>
    <h2>{FINDINGS.next}</h2>
    <ol>
      {findings.nextSteps.map((step) => (
        <Sourced reason={step} />
      ))}
    </ol>
  </>
);

const Sourced = ({ reason }: { readonly reason: Reason }) => (
  <li>
    {reason.text} <small>({reason.source})</small>
  </li>
);
