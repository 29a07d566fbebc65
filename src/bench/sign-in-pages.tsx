import {
  HOW_TO_SIGN_IN,
  NOT_SIGNED_IN,
  SIGN_IN,
  SIGN_IN_PROBLEM,
  SIGN_OUT,
  type SignInProblem,
} from "#shared/messages/shop-sign-in-words.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { ShopPage } from "#src/bench/shop-page.tsx";

type FrontProps = { readonly front: ShopSettings["front"] };

/** One button: a preview of the link, which only looks, does not use it up. */
export const SignInPage = ({ front }: FrontProps) => (
  <ShopPage title={SIGN_IN.title} front={front}>
    <p>{SIGN_IN.asks}</p>
    <form method="post">
      <p class="actions">
        <button type="submit">{SIGN_IN.button}</button>
      </p>
    </form>
  </ShopPage>
);

export const SignInProblemPage = ({ front, problem }: FrontProps & { readonly problem: SignInProblem }) => (
  <ShopPage title={NOT_SIGNED_IN.title} front={front}>
    <p class="problem">{SIGN_IN_PROBLEM[problem]}</p>
    <HowToSignIn />
  </ShopPage>
);

export const NotSignedInPage = ({ front }: FrontProps) => (
  <ShopPage title={NOT_SIGNED_IN.title} front={front}>
    <p>{NOT_SIGNED_IN.says}</p>
    <HowToSignIn />
  </ShopPage>
);

export const SignedOutPage = ({ front }: FrontProps) => (
  <ShopPage title={SIGN_OUT.title} front={front}>
    <p>{SIGN_OUT.says}</p>
    <HowToSignIn />
  </ShopPage>
);

const HowToSignIn = () => (
  <p>
    {HOW_TO_SIGN_IN.before} <code>{HOW_TO_SIGN_IN.command}</code>. {HOW_TO_SIGN_IN.after}
  </p>
);
