import type { Child } from "hono/jsx";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { ShopLinks } from "#src/bench/shop-links.tsx";
import type { Asset } from "#src/http/asset-routes.ts";
import { PageFrame } from "#src/http/page-frame.tsx";

type ShopPageProps = {
  readonly title: string;
  readonly front: ShopSettings["front"];
  readonly script?: Asset;
  readonly children?: Child;
};

/** A page of the shop: one sheet of paper under the shop's line. */
export const ShopPage = ({ title, front, script, children }: ShopPageProps) => (
  <PageFrame title={title} front={front} kind="shop" script={script} links={<ShopLinks />}>
    <main id="main" class="sheet">
      <h1>{title}</h1>
      {children}
    </main>
  </PageFrame>
);
