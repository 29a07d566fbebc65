import { raw } from "hono/html";
import type { Child } from "hono/jsx";
import { BENCH_CSS, CSS, SCRIPT } from "#build/assets.ts";
import { PAGE_WORDS } from "#shared/messages/page-words.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import type { Asset } from "#src/http/asset-routes.ts";

type FrameProps = {
  readonly title: string;
  readonly front: ShopSettings["front"];
  readonly kind: "owner" | "shop";
  /** What the page loads to be faster and kinder; owners' pages get the conversation's script where none is named. */
  readonly script?: Asset | undefined;
  /** In the shop's line, on pages of the shop. */
  readonly links?: Child;
  readonly children?: Child;
};

/** The frame of every page: head, the shop's line with its phone number, and the one main part that the script may swap. */
export function PageFrame({
  title,
  front,
  kind,
  script = kind === "owner" ? SCRIPT : undefined,
  links,
  children,
}: FrameProps) {
  return (
    <>
      {raw("<!doctype html>")}
      <html lang="en">
        <head>
          <meta charset="utf-8" />
          <meta name="viewport" content="width=device-width, initial-scale=1" />
          <meta name="color-scheme" content="light dark" />
          <title>{`${title} · ${front.name}`}</title>
          <link rel="icon" href="data:," />
          <link rel="stylesheet" href={`/assets/${CSS.name}`} />
          {kind === "shop" && <link rel="stylesheet" href={`/assets/${BENCH_CSS.name}`} />}
          {script && <script type="module" src={`/assets/${script.name}`}></script>}
        </head>
        <body>
          <a class="skip" href="#main">
            {PAGE_WORDS.skip}
          </a>
          <header class="bar">
            <a href={kind === "shop" ? "/shop" : "/"}>
              <strong>{front.name}</strong>
            </a>
            {kind === "owner" ? <a href={telLink(front.phone)}>{PAGE_WORDS.call(front.phone)}</a> : links}
          </header>
          <div role="status" id="said" class="notice screen"></div>
          {children}
        </body>
      </html>
    </>
  );
}

/** @example telLink("+1 202-555-0100") // "tel:+12025550100" */
export const telLink = (phone: string): string => `tel:${phone.replace(/[^+\d]/g, "")}`;
