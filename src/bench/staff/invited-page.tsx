import { PASSKEY_SCRIPT } from "#build/assets.ts";
import { PASSKEY_FORM } from "#shared/messages/passkey-words.ts";
import { INVITED } from "#shared/messages/shop-staff-words.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import type { Invitation } from "#shared/shop/staff-account.ts";
import type { Invited } from "#shared/shop/staff-wishes.ts";
import { LabelledField } from "#src/bench/labelled-field.tsx";
import { ShopPage } from "#src/bench/shop-page.tsx";
import { type PageAddress, PasskeyForm } from "#src/bench/staff/passkey-form.tsx";

type InvitedProps = {
  readonly front: ShopSettings["front"];
  readonly at: PageAddress;
  readonly invitation: Invitation;
  readonly invited: Invited;
  readonly typed?: string;
  readonly problem?: { readonly field: "name" | "passkey"; readonly text: string };
};

/** Where somebody who was invited says their name and makes their passkey. */
export const InvitedPage = ({ front, at, invitation, invited, typed = "", problem }: InvitedProps) => (
  <ShopPage title={INVITED.title} front={front} script={PASSKEY_SCRIPT}>
    {invitation.to === "join" && <p>{INVITED.join(invitation.role)}</p>}
    {invited.staff !== null && <p>{INVITED.back(invited.staff.name)}</p>}
    <p class="faint">{PASSKEY_FORM.what}</p>
    <PasskeyForm
      kind="add"
      action={at.path}
      options={`${at.path}/options`}
      at={at}
      problem={problem?.field === "passkey" ? problem.text : undefined}
    >
      {invited.staff === null && (
        <LabelledField
          name="name"
          label={INVITED.name}
          hint={INVITED.nameHint}
          problem={problem?.field === "name" ? problem.text : undefined}
          control={(links) => (
            <input type="text" value={typed} maxlength={60} autocomplete="name" required {...links} />
          )}
        />
      )}
    </PasskeyForm>
  </ShopPage>
);
