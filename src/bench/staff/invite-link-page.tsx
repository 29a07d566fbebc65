import { INVITE_LINK, STAFF } from "#shared/messages/shop-staff-words.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { ShopPage } from "#src/bench/shop-page.tsx";
import { QrCode } from "#src/http/qr-code.tsx";

type InviteLinkProps = { readonly front: ShopSettings["front"]; readonly link: string };

/** A link to hand over. It has no address of its own, so that it cannot be looked at again. */
export const InviteLinkPage = ({ front, link }: InviteLinkProps) => (
  <ShopPage title={INVITE_LINK.title} front={front}>
    <p>{INVITE_LINK.says}</p>
    <QrCode text={link} label={INVITE_LINK.qr} />
    <label class="field">
      <span>{INVITE_LINK.label}</span>
      <textarea readonly rows={5}>
        {link}
      </textarea>
    </label>
    <p class="actions">
      <a href="/shop/staff">{STAFF.back}</a>
    </p>
  </ShopPage>
);
