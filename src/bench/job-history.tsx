import { eventNote, eventText } from "#shared/messages/shop-event-words.ts";
import { JOB, WHO } from "#shared/messages/shop-job-words.ts";
import { timeText } from "#shared/messages/time-words.ts";
import type { Job, JobEvent } from "#shared/shop/booking.ts";

/** Everything that happened to a job: when, who did it, and what was said with it. */
export const JobHistory = ({ job, locale }: { readonly job: Job; readonly locale: string }) => (
  <>
    <h2 id="history">{JOB.history}</h2>
    <section class="scroll" tabindex={0} aria-labelledby="history">
      <table>
        <thead>
          <tr>
            <th scope="col">{JOB.when}</th>
            <th scope="col">{JOB.who}</th>
            <th scope="col">{JOB.what}</th>
            <th scope="col">{JOB.note}</th>
          </tr>
        </thead>
        <tbody>
          {job.history.map((event) => (
            <tr>
              <td>{timeText(event.at, job.booking.time.zone, locale)}</td>
              <td>{whoText(event)}</td>
              <td>{eventText(event.what)}</td>
              <td>{eventNote(event)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  </>
);

const whoText = ({ who, staff }: JobEvent): string => (staff === null ? WHO[who] : `${WHO[who]}, ${staff}`);
