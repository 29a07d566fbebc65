import { sourceText } from "#shared/basics/source.ts";
import { JOB } from "#shared/messages/shop-job-words.ts";
import { JOB_PARTS, SHELF_WORDS, STOCK } from "#shared/messages/stock-words.ts";
import type { Job } from "#shared/shop/booking.ts";
import { IN_THE_SHOP } from "#shared/shop/job-state.ts";
import { partsThatFit } from "#shared/shop/parts.ts";
import { shelfKey } from "#shared/shop/shelf.ts";
import { RESERVING, stillWanted } from "#shared/shop/stock.ts";
import type { JobPartLine } from "#shared/shop/stock-wish.ts";
import { LabelledField } from "#src/bench/labelled-field.tsx";
import { shelfPath } from "#src/bench/parts/shelf-path.ts";

type JobPartsProps = {
  readonly job: Job;
  readonly lines: readonly JobPartLine[];
  /** Names a form anew, so that it counts once however often it is sent. */
  readonly newId: () => string;
};

/** What is laid out for a job and what it took, one touch for each. */
export const JobParts = ({ job, lines, newId }: JobPartsProps) => (
  <section id="parts" aria-labelledby="parts-title">
    <h2 id="parts-title">{JOB_PARTS.title}</h2>
    <ul class="job-parts">
      {lines.map((line) => (
        <PartLine job={job} line={line} newId={newId} />
      ))}
    </ul>
    {RESERVING.includes(job.state) && <MoreParts job={job} newId={newId} />}
    <p class="screen">
      <a href="/shop/parts">{JOB_PARTS.stock}</a>
    </p>
  </section>
);

type PartLineProps = { readonly job: Job; readonly line: JobPartLine; readonly newId: () => string };

function PartLine({ job, line, newId }: PartLineProps) {
  const { name, source, planned, used, shelves } = line;
  const left = stillWanted(line);
  return (
    <li>
      <div>
        <strong>{name}</strong>{" "}
        <small>{source === null ? JOB_PARTS.addedByBench : JOB.source(sourceText(source))}</small>
        <p>
          {JOB_PARTS.laidOut} <b>{planned}</b> · {JOB_PARTS.used} <b>{used}</b>
          <span class="screen">
            {shelves.map((shelf) => (
              <>
                {" · "}
                <a href={shelfPath(shelf)}>
                  {JOB_PARTS.shelf}
                  {shelves.length > 1 && `, ${SHELF_WORDS[shelf.family]}`}: {shelf.onHand}
                </a>
                {shelf.countAgain && <strong> {STOCK.countAgain}</strong>}
              </>
            ))}
          </span>
        </p>
      </div>
      {IN_THE_SHOP.includes(job.state) && (
        <div class="touches screen">
          {shelves.map((shelf) => {
            const which = shelves.length > 1 ? SHELF_WORDS[shelf.family] : null;
            const at = { job, part: name, shelf: shelfKey(shelf), newId };
            return (
              <>
                <Touch
                  {...at}
                  to="use"
                  count={Math.max(1, left)}
                  says={left > 0 ? JOB_PARTS.use(left, which) : JOB_PARTS.useMore(which)}
                  quiet={left === 0}
                />
                {shelf.used > 0 && <Touch {...at} to="take-back" count={1} says={JOB_PARTS.takeBack(which)} quiet />}
              </>
            );
          })}
          {left > 0 && RESERVING.includes(job.state) && (
            <Touch
              job={job}
              part={name}
              shelf={`${line.part}/`}
              to="put-away"
              count={left}
              says={JOB_PARTS.putAway}
              quiet
              newId={newId}
            />
          )}
        </div>
      )}
    </li>
  );
}

type TouchProps = {
  readonly job: Job;
  readonly part: string;
  readonly shelf: string;
  readonly to: "use" | "take-back" | "put-away";
  readonly count: number;
  readonly says: string;
  readonly quiet: boolean;
  readonly newId: () => string;
};

const Touch = ({ job, part, shelf, to, count, says, quiet, newId }: TouchProps) => (
  <form method="post" action={`/shop/jobs/${job.number}/parts/${to}`}>
    <input type="hidden" name="wish" value={newId()} />
    <input type="hidden" name="shelf" value={shelf} />
    <input type="hidden" name="count" value={String(count)} />
    <button type="submit" class={quiet ? "quiet" : undefined} aria-label={JOB_PARTS.touch(says, part)}>
      {says}
    </button>
  </form>
);

const MoreParts = ({ job, newId }: { readonly job: Job; readonly newId: () => string }) => (
  <details class="screen">
    <summary>{JOB_PARTS.more}</summary>
    <form method="post" action={`/shop/jobs/${job.number}/parts/add`}>
      <input type="hidden" name="wish" value={newId()} />
      <LabelledField
        name="shelf"
        label={JOB_PARTS.morePart}
        control={(links) => (
          <select {...links}>
            {partsThatFit(job.answers.unitFamily).map(({ part, name }) => (
              <option value={`${part}/`}>{name}</option>
            ))}
          </select>
        )}
      />
      <LabelledField
        name="count"
        label={JOB_PARTS.moreCount}
        short
        control={(links) => <input type="text" inputmode="numeric" autocomplete="off" value="1" {...links} />}
      />
      <button type="submit">{JOB_PARTS.moreButton}</button>
    </form>
  </details>
);
