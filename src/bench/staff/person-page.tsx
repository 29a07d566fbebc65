import { STAFF, STAFF_DONE, type StaffDone } from "#shared/messages/shop-staff-words.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import type { StaffAccount } from "#shared/shop/staff-account.ts";
import { LabelledField } from "#src/bench/labelled-field.tsx";
import { ShopPage } from "#src/bench/shop-page.tsx";
import { DeviceText, PasskeyList, shopTime } from "#src/bench/staff/account-parts.tsx";
import { RoleChoice } from "#src/bench/staff/staff-page.tsx";

type PersonProps = {
  readonly settings: ShopSettings;
  readonly account: StaffAccount;
  readonly done?: StaffDone | undefined;
  /** Why a change was refused; `typed` = the name that was not taken. */
  readonly problem?: { readonly text: string; readonly typed?: string };
};

/** Somebody's account, for a manager: name, role, passkeys, devices, a way back, and ending it. */
export function PersonPage({ settings, account, done, problem }: PersonProps) {
  const time = shopTime(settings);
  const path = `/shop/staff/${account.id}`;
  const nameProblem = problem?.typed === undefined ? undefined : problem.text;
  return (
    <ShopPage title={STAFF.person(account.name)} front={settings.front}>
      {done && (
        <p class="notice" role="status">
          {STAFF_DONE[done]}
        </p>
      )}
      {problem !== undefined && nameProblem === undefined && (
        <p class="problem" role="alert">
          {problem.text}
        </p>
      )}
      <form method="post" action={`${path}/rename`}>
        <LabelledField
          name="name"
          label={STAFF.rename}
          problem={nameProblem}
          control={(links) => (
            <input type="text" value={problem?.typed ?? account.name} maxlength={60} autocomplete="off" {...links} />
          )}
        />
        <Send text={STAFF.renameButton} />
      </form>
      <form method="post" action={`${path}/role`}>
        <RoleChoice chosen={account.role} />
        <Send text={STAFF.roleButton} />
      </form>
      <h2>{STAFF.passkeys}</h2>
      {account.passkeys.length === 0 && <p>{STAFF.noPasskeys}</p>}
      <PasskeyList passkeys={account.passkeys} time={time} remove={`${path}/passkeys/remove`} />
      <h2>{STAFF.linkTitle}</h2>
      <p>{STAFF.linkSays}</p>
      <form method="post" action={`${path}/link`}>
        <Send text={STAFF.inviteButton} />
      </form>
      <h2>{STAFF.devices}</h2>
      {account.devices.length === 0 && <p>{STAFF.noDevices}</p>}
      <ul class="entries">
        {account.devices.map((device) => (
          <li>
            <DeviceText device={device} time={time} />
          </li>
        ))}
      </ul>
      {account.devices.length > 0 && (
        <form method="post" action={`${path}/sign-out-all`}>
          <Send text={STAFF.signOutAll} />
        </form>
      )}
      <p class="actions">
        <a class="button quiet" href={`${path}/end`}>
          {STAFF.endTitle}
        </a>
        <a href="/shop/staff">{STAFF.back}</a>
      </p>
    </ShopPage>
  );
}

const Send = ({ text }: { readonly text: string }) => (
  <p class="actions">
    <button type="submit" class="quiet">
      {text}
    </button>
  </p>
);

/** Asked once more before an account is ended. */
export const EndAccountPage = ({ settings, account }: Pick<PersonProps, "settings" | "account">) => (
  <ShopPage title={STAFF.person(account.name)} front={settings.front}>
    <h2>{STAFF.endTitle}</h2>
    <p>{STAFF.endSays}</p>
    <form method="post">
      <p class="actions">
        <button type="submit">{STAFF.endButton}</button>
        <a href={`/shop/staff/${account.id}`}>{STAFF.person(account.name)}</a>
      </p>
    </form>
  </ShopPage>
);
