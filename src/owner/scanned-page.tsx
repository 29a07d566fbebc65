import { SCANNED } from "#shared/messages/tag-words.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { PageFrame } from "#src/http/page-frame.tsx";

type ScannedPageProps = { readonly front: ShopSettings["front"]; readonly number: string };

/** What the tag's QR code says to anybody: whose parcel it is, and no word about the owner. */
export const ScannedPage = ({ front, number }: ScannedPageProps) => (
  <PageFrame title={SCANNED.title(number)} front={front} kind="owner">
    <main id="main">
      <div class="sheet">
        <h1 tabindex={-1}>{SCANNED.title(number)}</h1>
        <p>{SCANNED.owners(front.phone)}</p>
        <p>{SCANNED.finder(front.name)}</p>
        <p class="actions">
          <a class="button quiet" href={`/shop/receive/${number}`}>
            {SCANNED.staff}
          </a>
        </p>
      </div>
    </main>
  </PageFrame>
);
