import type { Child } from "hono/jsx";
import { NO_PASSKEYS, PASSKEY_FORM } from "#shared/messages/passkey-words.ts";
import { LabelledField } from "#src/bench/labelled-field.tsx";
import { namedOrigin, passkeySite } from "#src/bench/staff/passkey-site.ts";

type PasskeyFormProps = {
  /** Whether a passkey is shown or made. */
  readonly kind: "sign-in" | "add";
  readonly action: string;
  /** Where its script gets the challenge with all that goes with it. */
  readonly options: string;
  readonly at: PageAddress;
  readonly problem?: string | undefined;
  readonly children?: Child;
};

/** Where the page is: passkeys belong to a host name. */
export type PageAddress = { readonly origin: string; readonly path: string };

/** A form that its script fills with a passkey's answer; where that cannot work it says why and what does. */
export function PasskeyForm({ kind, action, options, at, problem, children }: PasskeyFormProps) {
  const site = passkeySite(at.origin);
  if (!site.ok) return <NoPasskeysHere why={site.refusal} at={at} />;
  return (
    <form method="post" action={action} data-passkey={kind} data-options={options}>
      <input type="hidden" name="response" value="" />
      {children}
      {kind === "add" && <LabelField />}
      {problem !== undefined && (
        <p class="problem" role="alert">
          {problem}
        </p>
      )}
      <p class="problem" role="alert" data-trouble hidden></p>
      <noscript>
        <p class="problem">{PASSKEY_FORM.noScript}</p>
      </noscript>
      <p class="actions">
        <button type="submit">{kind === "add" ? PASSKEY_FORM.add : PASSKEY_FORM.signIn}</button>
      </p>
    </form>
  );
}

const LabelField = () => (
  <LabelledField
    name="label"
    label={PASSKEY_FORM.label}
    hint={PASSKEY_FORM.labelHint}
    control={(links) => (
      <input type="text" value={PASSKEY_FORM.labelDefault} maxlength={40} autocomplete="off" {...links} />
    )}
  />
);

type NoPasskeysProps = { readonly why: "numeric-address" | "insecure-address"; readonly at: PageAddress };

function NoPasskeysHere({ why, at }: NoPasskeysProps) {
  const named = namedOrigin(at.origin);
  return (
    <div class="notice">
      <p>{NO_PASSKEYS[why]}</p>
      {named !== null && (
        <p>
          {NO_PASSKEYS.byName} <a href={`${named}${at.path}`}>{named}</a>
        </p>
      )}
    </div>
  );
}
