import type { Child } from "hono/jsx";
import { PASSKEY_SCRIPT } from "#build/assets.ts";
import { PASSKEY_FORM } from "#shared/messages/passkey-words.ts";
import {
  HOW_TO_SIGN_IN,
  MANAGERS_ONLY,
  NOT_SIGNED_IN,
  SIGN_IN,
  SIGN_IN_PAGE,
  SIGN_OUT,
} from "#shared/messages/shop-sign-in-words.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { ShopPage } from "#src/bench/shop-page.tsx";
import { type PageAddress, PasskeyForm } from "#src/bench/staff/passkey-form.tsx";

type FrontProps = { readonly front: ShopSettings["front"] };
type DoorProps = FrontProps & {
  readonly at: PageAddress;
  /** The page to go to once signed in. */
  readonly next?: string;
  readonly problem?: string | undefined;
};

/** Where everybody signs in. */
export const SignInPage = (props: DoorProps) => <Door title={SIGN_IN_PAGE.title} {...props} />;

/** In place of a page of the shop, for whoever is not signed in. */
export const NotSignedInPage = (props: DoorProps) => (
  <Door title={NOT_SIGNED_IN.title} {...props}>
    <p>{NOT_SIGNED_IN.says}</p>
  </Door>
);

export const SignedOutPage = (props: DoorProps) => (
  <Door title={SIGN_OUT.title} {...props}>
    <p>{SIGN_OUT.says}</p>
  </Door>
);

/** One button: a preview of the link, which only looks, does not use it up. */
export const LinkSignInPage = ({ front }: FrontProps) => (
  <ShopPage title={SIGN_IN.title} front={front}>
    <p>{SIGN_IN.asks}</p>
    <form method="post">
      <p class="actions">
        <button type="submit">{SIGN_IN.button}</button>
      </p>
    </form>
  </ShopPage>
);

export const LinkProblemPage = ({ front, problem }: FrontProps & { readonly problem: string }) => (
  <ShopPage title={NOT_SIGNED_IN.title} front={front}>
    <p class="problem">{problem}</p>
    <WithoutPasskey />
  </ShopPage>
);

/** In place of a page that the role of who looks does not reach. */
export const ManagersOnlyPage = ({ front }: FrontProps) => (
  <ShopPage title={MANAGERS_ONLY.title} front={front}>
    <p>{MANAGERS_ONLY.says}</p>
    <p class="actions">
      <a class="button" href="/shop">
        {MANAGERS_ONLY.back}
      </a>
    </p>
  </ShopPage>
);

type TitledDoor = DoorProps & { readonly title: string; readonly children?: Child };

const Door = ({ title, front, at, next = "/shop", problem, children }: TitledDoor) => (
  <ShopPage title={title} front={front} script={PASSKEY_SCRIPT}>
    {children}
    <PasskeyForm kind="sign-in" action="/shop/sign-in" options="/shop/sign-in/options" at={at} problem={problem}>
      <input type="hidden" name="next" value={next} />
    </PasskeyForm>
    <p class="faint">{PASSKEY_FORM.what}</p>
    <WithoutPasskey />
  </ShopPage>
);

const WithoutPasskey = () => (
  <>
    <h2>{NOT_SIGNED_IN.withoutPasskey}</h2>
    <p>{NOT_SIGNED_IN.askManager}</p>
    <p>
      {HOW_TO_SIGN_IN.before} <code>{HOW_TO_SIGN_IN.command}</code>. {HOW_TO_SIGN_IN.after}
    </p>
  </>
);
