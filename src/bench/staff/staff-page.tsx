import {
  ROLE,
  ROLE_SAYS,
  STAFF,
  STAFF_DONE,
  type StaffDone,
  staffEventText,
} from "#shared/messages/shop-staff-words.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { STAFF_ROLES, type StaffRole } from "#shared/shop/staff.ts";
import type { StaffAccount, StaffEvent } from "#shared/shop/staff-account.ts";
import { ShopPage } from "#src/bench/shop-page.tsx";
import { shopTime } from "#src/bench/staff/account-parts.tsx";

type StaffProps = {
  readonly settings: ShopSettings;
  readonly accounts: readonly StaffAccount[];
  readonly events: readonly StaffEvent[];
  readonly done?: StaffDone | undefined;
};

/** Everybody who works or worked here, inviting somebody, and what was changed by whom. */
export function StaffPage({ settings, accounts, events, done }: StaffProps) {
  const time = shopTime(settings);
  return (
    <ShopPage title={STAFF.title} front={settings.front}>
      {done && (
        <p class="notice" role="status">
          {STAFF_DONE[done]}
        </p>
      )}
      <StaffTable accounts={accounts} time={time} />
      <section aria-labelledby="invite">
        <h2 id="invite">{STAFF.invite}</h2>
        <p>{STAFF.inviteSays}</p>
        <form method="post" action="/shop/staff/invite">
          <RoleChoice chosen="bench" />
          <p class="actions">
            <button type="submit">{STAFF.inviteButton}</button>
          </p>
        </form>
      </section>
      <section aria-labelledby="history">
        <h2 id="history">{STAFF.history}</h2>
        {events.length === 0 && <p>{STAFF.noHistory}</p>}
        <ul class="entries">
          {events.map((event) => (
            <li>
              <div>
                {staffEventText(event)}
                <div class="faint">{time(event.at)}</div>
              </div>
            </li>
          ))}
        </ul>
      </section>
    </ShopPage>
  );
}

/** Which role, each with what it may do. */
export const RoleChoice = ({ chosen }: { readonly chosen: StaffRole }) => (
  <fieldset>
    <legend>{STAFF.role}</legend>
    {STAFF_ROLES.map((role) => (
      <label class="choice">
        <input type="radio" name="role" value={role} checked={role === chosen} />
        <span>
          {ROLE[role]} <span class="faint">{ROLE_SAYS[role]}</span>
        </span>
      </label>
    ))}
  </fieldset>
);

type TableProps = { readonly accounts: readonly StaffAccount[]; readonly time: (at: number) => string };

const StaffTable = ({ accounts, time }: TableProps) => (
  <div class="scroll">
    <table>
      <thead>
        <tr>
          <th scope="col">{STAFF.columns.name}</th>
          <th scope="col">{STAFF.columns.role}</th>
          <th scope="col">{STAFF.columns.passkeys}</th>
          <th scope="col">{STAFF.columns.devices}</th>
        </tr>
      </thead>
      <tbody>
        {accounts.map(({ id, name, role, leftAt, passkeys, devices }) => (
          <tr>
            <th scope="row">{leftAt === null ? <a href={`/shop/staff/${id}`}>{name}</a> : name}</th>
            <td>{leftAt === null ? ROLE[role] : STAFF.left(time(leftAt))}</td>
            <td>{passkeys.length}</td>
            <td>{devices.length}</td>
          </tr>
        ))}
      </tbody>
    </table>
  </div>
);
