import type { BenchFindings } from "#shared/job/bench-findings.ts";
import { ENGINE_STAYS_OFF, ENGINE_WORDS } from "#shared/messages/findings-words.ts";

/** Where parts are in the engine, or may be, that comes first of all. */
export const EngineWarning = ({ findings }: { readonly findings: BenchFindings }) =>
  findings.engineDebris === "unlikely" ? null : (
    <div class="signal warning">
      <b>⚠ WARNING</b>
      <p>
        <strong>{ENGINE_STAYS_OFF}</strong> {ENGINE_WORDS[findings.engineDebris]}
      </p>
    </div>
  );
