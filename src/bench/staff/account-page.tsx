import { PASSKEY_SCRIPT } from "#build/assets.ts";
import { PASSKEY_FORM } from "#shared/messages/passkey-words.ts";
import { SIGN_OUT } from "#shared/messages/shop-sign-in-words.ts";
import { ACCOUNT, STAFF_DONE, type StaffDone } from "#shared/messages/shop-staff-words.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import type { Device, StaffAccount } from "#shared/shop/staff-account.ts";
import { LabelledField } from "#src/bench/labelled-field.tsx";
import { ShopPage } from "#src/bench/shop-page.tsx";
import { DeviceText, PasskeyList, shopTime } from "#src/bench/staff/account-parts.tsx";
import { type PageAddress, PasskeyForm } from "#src/bench/staff/passkey-form.tsx";

type AccountProps = {
  readonly account: StaffAccount;
  readonly settings: ShopSettings;
  readonly at: PageAddress;
  /** The session at hand. */
  readonly hash: string;
  /** Came in by a link just now. */
  readonly welcome?: boolean;
  readonly done?: StaffDone | undefined;
  readonly problem?: { readonly field: "name" | "passkey"; readonly text: string; readonly typed?: string };
};

/** Everybody's own account: passkeys, name, and the devices that are signed in. */
export function AccountPage({ account, settings, at, hash, welcome, done, problem }: AccountProps) {
  const time = shopTime(settings);
  const { passkeys, devices } = account;
  return (
    <ShopPage title={ACCOUNT.title} front={settings.front} script={PASSKEY_SCRIPT}>
      {done && (
        <p class="notice" role="status">
          {STAFF_DONE[done]}
        </p>
      )}
      {welcome && (
        <div class="notice">
          <p>{ACCOUNT.welcome}</p>
        </div>
      )}
      <p>{ACCOUNT.is(account.name, account.role)}</p>
      <form method="post" action="/shop/account/rename">
        <LabelledField
          name="name"
          label={ACCOUNT.name}
          hint={ACCOUNT.nameHint}
          problem={problem?.field === "name" ? problem.text : undefined}
          control={(links) => (
            <input type="text" value={problem?.typed ?? account.name} maxlength={60} autocomplete="name" {...links} />
          )}
        />
        <p class="actions">
          <button type="submit" class="quiet">
            {ACCOUNT.rename}
          </button>
        </p>
      </form>
      <section aria-labelledby="passkeys">
        <h2 id="passkeys">{ACCOUNT.passkeys}</h2>
        {passkeys.length === 0 && <p>{ACCOUNT.noPasskeys}</p>}
        <PasskeyList passkeys={passkeys} time={time} remove="/shop/account/passkeys/remove" />
        <h2>{passkeys.length === 0 ? ACCOUNT.firstTitle : ACCOUNT.addTitle}</h2>
        <p class="faint">{PASSKEY_FORM.what}</p>
        <PasskeyForm
          kind="add"
          action="/shop/account/passkeys"
          options="/shop/account/passkey-options"
          at={at}
          problem={problem?.field === "passkey" ? problem.text : undefined}
        />
        {welcome && (
          <p>
            <a href="/shop">{ACCOUNT.later}</a>
          </p>
        )}
      </section>
      <section aria-labelledby="devices">
        <h2 id="devices">{ACCOUNT.devices}</h2>
        <Devices devices={devices} hash={hash} time={time} />
      </section>
    </ShopPage>
  );
}

type DevicesProps = {
  readonly devices: readonly Device[];
  readonly hash: string;
  readonly time: (at: number) => string;
};

const Devices = ({ devices, hash, time }: DevicesProps) => (
  <>
    <ul class="entries">
      {devices.map((device) => (
        <li>
          <div>
            <strong>{device.hash === hash ? ACCOUNT.thisDevice : ACCOUNT.otherDevice}</strong>
            <DeviceText device={device} time={time} />
          </div>
          {device.hash === hash ? (
            <form method="post" action="/shop/sign-out">
              <button type="submit" class="quiet">
                {SIGN_OUT.button}
              </button>
            </form>
          ) : (
            <form method="post" action="/shop/account/sign-out">
              <input type="hidden" name="device" value={device.hash} />
              <button type="submit" class="quiet">
                {ACCOUNT.signOutOther}
              </button>
            </form>
          )}
        </li>
      ))}
    </ul>
    {devices.length > 1 && (
      <form method="post" action="/shop/account/sign-out-others">
        <p class="actions">
          <button type="submit" class="quiet">
            {ACCOUNT.signOutOthers}
          </button>
        </p>
      </form>
    )}
  </>
);
