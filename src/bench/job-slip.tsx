import { JOB } from "#shared/messages/shop-job-words.ts";
import type { SlipPlan } from "#shared/slip/slip-plan.ts";
import { SLIP_RULES } from "#shared/slip/slip-rules.ts";
import { FactList } from "#src/bench/fact-list.tsx";

type JobSlipProps = { readonly slip: SlipPlan };

/** What to set, and from which rules. */
export const JobSlip = ({ slip }: JobSlipProps) => (
  <>
    <h2>{JOB.slip}</h2>
    <FactList
      facts={[
        [JOB.target, slip.target ? JOB.torque(slip.target.value, slip.targetSI?.value) : JOB.noTarget],
        ...(slip.band ? [[JOB.band, JOB.bandText(slip.band.low, slip.band.high)] as const] : []),
        [JOB.setBeforeLock, slip.setBeforeLock ? JOB.torque(slip.setBeforeLock.value, undefined) : JOB.noSetBeforeLock],
      ]}
    />
    {slip.cautions.map((caution) => (
      <div class="signal note">
        <b>{JOB.notice}</b>
        <p>{caution}</p>
      </div>
    ))}
    <h2>{JOB.basis}</h2>
    <ul>
      {SLIP_RULES.filter(({ id }) => slip.basis.includes(id)).map(({ text, source }) => (
        <li>
          {text} <small>{JOB.source(source)}</small>
        </li>
      ))}
    </ul>
  </>
);
