import type { Child } from "hono/jsx";
import type { Offer } from "#shared/calendar/find-offers.ts";
import {
  BACK_TO_JOB,
  CANCEL,
  MOVE,
  NEW_LINK,
  type OffTime,
  RECEIVED_OFF_TIME,
} from "#shared/messages/shop-change-words.ts";
import { slotText } from "#shared/messages/shop-times.ts";
import type { Job } from "#shared/shop/booking.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { LabelledField } from "#src/bench/labelled-field.tsx";
import { PickOffer } from "#src/bench/pick-offer.tsx";
import { ShopPage } from "#src/bench/shop-page.tsx";
import { telLink } from "#src/http/page-frame.tsx";

type ChangeProps = {
  readonly front: ShopSettings["front"];
  readonly job: Job;
  readonly problem?: string | undefined;
};

type MoveProps = ChangeProps & {
  readonly offers: readonly Offer[];
  /** The first day asked for, as typed, and whether it could be read. */
  readonly from: { readonly typed: string; readonly isDate: boolean };
  /** Right after it was received. */
  readonly received?: OffTime | undefined;
};

export const MovePage = ({ front, job, offers, from, problem, received }: MoveProps) => (
  <ShopPage title={MOVE.title(job.number)} front={front}>
    {received !== undefined && (
      <p class="notice" role="status">
        {RECEIVED_OFF_TIME[received]}
      </p>
    )}
    <p>
      {MOVE.now}: <strong>{slotText(job.booking.time, front.locale)}</strong>, {job.booking.time.benchName}
    </p>
    <form method="get">
      <LabelledField
        name="from"
        label={MOVE.from}
        hint={MOVE.fromHint}
        problem={from.isDate ? undefined : MOVE.notADate}
        short
        control={(links) => <input type="date" value={from.typed} {...links} />}
      />
      <button type="submit" class="quiet">
        {MOVE.show}
      </button>
    </form>
    <form method="post" action={`/shop/jobs/${job.number}/move`}>
      <PickOffer offers={offers} locale={front.locale} problem={problem} unitHere={job.state !== "booked"} />
      <Affected owner={job.owner} />
      <p class="actions">
        {offers.length > 0 && <button type="submit">{MOVE.button}</button>}
        {received === undefined ? (
          <BackToJob number={job.number} />
        ) : (
          <a class="button quiet" href={`/shop/jobs/${job.number}?done=receive`}>
            {MOVE.keep}
          </a>
        )}
      </p>
    </form>
  </ShopPage>
);

/** Whom the shop has to tell. */
const Affected = ({ owner }: Pick<Job, "owner">) => (
  <p>
    {MOVE.affects(owner.name)} {owner.phone !== undefined && <a href={telLink(owner.phone)}>{owner.phone}</a>}
    {owner.phone !== undefined && owner.email !== undefined && ", "}
    {owner.email !== undefined && <a href={`mailto:${owner.email}`}>{owner.email}</a>}. {MOVE.affectsNobody}
  </p>
);

export const CancelPage = (props: ChangeProps) => (
  <ConfirmPage {...props} title={CANCEL.title(props.job.number)} button={CANCEL.button} action="cancel">
    <p>
      <strong>{slotText(props.job.booking.time, props.front.locale)}</strong>, {props.job.booking.time.benchName}
    </p>
    <p>{CANCEL.says}</p>
  </ConfirmPage>
);

export const NewLinkPage = (props: ChangeProps) => (
  <ConfirmPage {...props} title={NEW_LINK.title(props.job.number)} button={NEW_LINK.button} action="link">
    <p>{NEW_LINK.says}</p>
    <input type="hidden" name="generation" value={String(props.job.linkGeneration)} />
  </ConfirmPage>
);

type ConfirmProps = ChangeProps & {
  readonly title: string;
  readonly button: string;
  readonly action: "cancel" | "link";
  readonly children?: Child;
};

/** Says what will happen and asks once more. */
const ConfirmPage = ({ front, job, problem, title, button, action, children }: ConfirmProps) => (
  <ShopPage title={title} front={front}>
    {problem !== undefined && (
      <p class="problem" role="alert">
        {problem}
      </p>
    )}
    <form method="post" action={`/shop/jobs/${job.number}/${action}`}>
      {children}
      <p class="actions">
        <button type="submit">{button}</button>
        <BackToJob number={job.number} />
      </p>
    </form>
  </ShopPage>
);

export const BackToJob = ({ number }: { readonly number: string }) => (
  <a class="button quiet" href={`/shop/jobs/${number}`}>
    {BACK_TO_JOB(number)}
  </a>
);
