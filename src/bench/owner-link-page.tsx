import { NEW_LINK } from "#shared/messages/shop-change-words.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { BackToJob } from "#src/bench/change-pages.tsx";
import { ShopPage } from "#src/bench/shop-page.tsx";

type OwnerLinkProps = {
  readonly front: ShopSettings["front"];
  readonly number: string;
  /** Null where the page has ended. */
  readonly link: string | null;
};

/** The owner's link, for a short while, to be copied and handed over. */
export const OwnerLinkPage = ({ front, number, link }: OwnerLinkProps) => (
  <ShopPage title={NEW_LINK.madeTitle(number)} front={front}>
    {link === null ? (
      <p class="notice">{NEW_LINK.gone}</p>
    ) : (
      <>
        <p>{NEW_LINK.made}</p>
        <label class="field">
          <span>{NEW_LINK.label}</span>
          <textarea readonly rows={3}>
            {link}
          </textarea>
        </label>
      </>
    )}
    <p class="actions">
      {link !== null && (
        <a class="button" href={link}>
          {NEW_LINK.open}
        </a>
      )}
      <BackToJob number={number} />
    </p>
  </ShopPage>
);
