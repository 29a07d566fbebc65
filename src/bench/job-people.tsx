import { moneyText, quoteText } from "#shared/messages/money-words.ts";
import { JOB } from "#shared/messages/shop-job-words.ts";
import type { Job } from "#shared/shop/booking.ts";
import type { ReturnTo } from "#shared/shop/people.ts";
import { type Fact, FactList } from "#src/bench/fact-list.tsx";
import { telLink } from "#src/http/page-frame.tsx";

/** Whose unit it is, and how to ask. */
export const JobOwner = ({ owner }: Pick<Job, "owner">) => (
  <>
    <h2>{JOB.owner}</h2>
    <FactList
      facts={[
        [JOB.name, owner.name],
        ...linked(JOB.phone, owner.phone, telLink),
        ...linked(JOB.email, owner.email, (email) => `mailto:${email}`),
      ]}
    />
  </>
);

/** Where the unit goes when it is done, and what it may cost. */
export function JobReturn({ job, locale }: { readonly job: Job; readonly locale: string }) {
  const { plan, agreed, returnTo, serial } = job;
  return (
    <>
      <h2>{JOB.return}</h2>
      <FactList
        facts={[
          [JOB.returnTo, <ReturnAddress to={returnTo} />],
          [JOB.serial, serial ?? JOB.noSerial],
        ]}
      />
      <h2>{JOB.money}</h2>
      <FactList
        facts={[
          [JOB.priceShown, quoteText(plan.quote, locale)],
          ...(agreed === null ? [] : [[JOB.priceAgreed, quoteText(agreed.quote, locale)] as const]),
          [JOB.goAhead, goAheadText(job, locale)],
          [JOB.usualDays, JOB.days(plan.quote.usualDays)],
        ]}
      />
    </>
  );
}

const goAheadText = ({ goAheadMinor, plan }: Job, locale: string): string =>
  goAheadMinor === null ? JOB.noGoAhead : moneyText(goAheadMinor, plan.quote.currency, locale);

const linked = (label: string, value: string | undefined, link: (value: string) => string): readonly Fact[] =>
  value === undefined ? [] : [[label, <a href={link(value)}>{value}</a>]];

function ReturnAddress({ to }: { readonly to: ReturnTo }) {
  if ("collect" in to) return <>{JOB.collects}</>;
  return (
    <>
      {[...to.lines, `${to.region} ${to.postcode}`, to.country].map((line) => (
        <>
          {line}
          <br />
        </>
      ))}
    </>
  );
}
