import { SCAN_SCRIPT } from "#build/assets.ts";
import { RECEIVE, RECEIVE_PROBLEM } from "#shared/messages/shop-receive-words.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { LabelledField } from "#src/bench/labelled-field.tsx";
import { ShopPage } from "#src/bench/shop-page.tsx";

type ReceiveProps = {
  readonly front: ShopSettings["front"];
  /** What was typed or scanned, why it leads to no job, and which jobs may have been meant. */
  readonly notFound?: {
    readonly typed: string;
    readonly problem: keyof typeof RECEIVE_PROBLEM;
    readonly meant: readonly string[];
  };
};

/** A parcel has come: which job is it? */
export const ReceivePage = ({ front, notFound }: ReceiveProps) => (
  <ShopPage title={RECEIVE.title} front={front} script={SCAN_SCRIPT}>
    <p>{RECEIVE.how}</p>
    <Camera />
    <form method="get" action="/shop/receive/find">
      <LabelledField
        name="number"
        label={RECEIVE.number}
        hint={RECEIVE.numberHint}
        problem={notFound && RECEIVE_PROBLEM[notFound.problem]}
        short
        control={(links) => (
          <input
            type="text"
            value={notFound?.typed ?? ""}
            autocomplete="off"
            autocapitalize="characters"
            spellcheck={false}
            {...links}
          />
        )}
      />
      {notFound !== undefined && notFound.meant.length > 0 && <Meant numbers={notFound.meant} />}
      <p>
        <button type="submit">{RECEIVE.find}</button>
      </p>
    </form>
    <h2>{RECEIVE.noTag}</h2>
    <p>{RECEIVE.noTagHow}</p>
    <p class="actions">
      <a class="button quiet" href="/shop/book?here">
        {RECEIVE.bookIn}
      </a>
    </p>
  </ShopPage>
);

/** Shown by the script, where there is a camera to ask for. */
const Camera = () => (
  <div id="scan" data-no-camera={RECEIVE.noCamera} data-not-a-tag={RECEIVE.notATag} hidden>
    <p>
      <button type="button" id="scan-start">
        {RECEIVE.scan}
      </button>
      <button type="button" id="scan-stop" class="quiet" hidden>
        {RECEIVE.stop}
      </button>
    </p>
    <div id="scan-picture" hidden>
      <p>{RECEIVE.aim}</p>
      <video id="scan-video" aria-label={RECEIVE.camera} playsinline muted></video>
    </div>
  </div>
);

const Meant = ({ numbers }: { readonly numbers: readonly string[] }) => (
  <p class="notice">
    {RECEIVE.didYouMean}{" "}
    {numbers.map((number) => (
      <a class="button quiet" href={`/shop/receive/${number}`}>
        {number}
      </a>
    ))}
  </p>
);
