import { benchJob } from "#shared/calendar/bench-job.ts";
import { ARRIVAL_GROUP, ARRIVALS, type FIND_JOB_PROBLEM } from "#shared/messages/shop-arrival-words.ts";
import { slotLines } from "#shared/messages/shop-times.ts";
import { SHOP_JOB_STATE, SHOP_WORK } from "#shared/messages/shop-words.ts";
import { dateText } from "#shared/messages/time-words.ts";
import type { Arrival } from "#shared/shop/booking.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { groupArrivals } from "#src/bench/arrival-groups.ts";
import { FindJob } from "#src/bench/find-job.tsx";
import { ShopPage } from "#src/bench/shop-page.tsx";

type ArrivalsProps = {
  readonly front: ShopSettings["front"];
  readonly arrivals: readonly Arrival[];
  /** The shop's calendar date. */
  readonly today: string;
  /** What was typed to find a job, and why none was found. */
  readonly notFound?: { readonly typed: string; readonly problem: keyof typeof FIND_JOB_PROBLEM };
};

/** Which units arrive when, urgent ones first. */
export function ArrivalsPage({ front, arrivals, today, notFound }: ArrivalsProps) {
  return (
    <ShopPage title={ARRIVALS.title} front={front}>
      <FindJob {...notFound} />
      {arrivals.length === 0 && <p>{ARRIVALS.none}</p>}
      {groupArrivals(arrivals, today).map(({ group, arrivals: some }) => (
        <section aria-labelledby={group}>
          <h2 id={group}>
            {ARRIVAL_GROUP[group]} ({some.length})
          </h2>
          <ArrivalTable arrivals={some} locale={front.locale} />
        </section>
      ))}
    </ShopPage>
  );
}

type TableProps = { readonly arrivals: readonly Arrival[]; readonly locale: string };

/** Scrolls by itself on a narrow screen; its links make that work by keyboard. */
const ArrivalTable = ({ arrivals, locale }: TableProps) => (
  <div class="scroll">
    <table>
      <thead>
        <tr>
          {(["job", "slot", "work", "owner", "bench", "postBy", "state"] as const).map((column) => (
            <th scope="col">{ARRIVALS[column]}</th>
          ))}
        </tr>
      </thead>
      <tbody>
        {arrivals.map((arrival) => (
          <ArrivalRow arrival={arrival} locale={locale} />
        ))}
      </tbody>
    </table>
  </div>
);

function ArrivalRow({ arrival, locale }: { readonly arrival: Arrival; readonly locale: string }) {
  const { day, hours } = slotLines(arrival.time, locale);
  return (
    <tr>
      <th scope="row">
        <a class="button quiet" href={`/shop/jobs/${arrival.number}`}>
          {arrival.number}
        </a>
      </th>
      <td>
        {unbroken(day)}
        <br />
        {unbroken(hours)}
      </td>
      <td>{unbroken(SHOP_WORK[benchJob(arrival.verdict)])}</td>
      <td>{arrival.ownerName}</td>
      <td>{unbroken(arrival.time.benchName)}</td>
      <td>{unbroken(dateText(arrival.postBy, locale))}</td>
      <td>{SHOP_JOB_STATE[arrival.state]}</td>
    </tr>
  );
}

/** No-break spaces keep a date on one line, so that a narrow screen scrolls the table instead of stacking words. */
const unbroken = (text: string): string => text.replaceAll(" ", "\u00a0");
