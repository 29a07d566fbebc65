import { DEVICE, PASSKEY_LIST } from "#shared/messages/shop-staff-words.ts";
import { timeText } from "#shared/messages/time-words.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import type { Device, PasskeyEntry } from "#shared/shop/staff-account.ts";

/** An instant on the shop's wall. */
export const shopTime =
  ({ calendar, front }: ShopSettings) =>
  (at: number): string =>
    timeText(at, calendar.zone, front.locale);

type PasskeysProps = {
  readonly passkeys: readonly PasskeyEntry[];
  readonly time: (at: number) => string;
  /** Where removing one is sent. */
  readonly remove: string;
};

/** Somebody's passkeys, each with a button to remove it. */
export const PasskeyList = ({ passkeys, time, remove }: PasskeysProps) => (
  <ul class="entries">
    {passkeys.map(({ id, label, addedAt, usedAt }) => (
      <li>
        <div>
          <strong>{label}</strong>
          <div class="faint">
            {PASSKEY_LIST.added(time(addedAt))},{" "}
            {usedAt === null ? PASSKEY_LIST.unused : PASSKEY_LIST.used(time(usedAt))}
          </div>
        </div>
        <form method="post" action={remove}>
          <input type="hidden" name="passkey" value={id} />
          <button type="submit" class="quiet" aria-label={PASSKEY_LIST.removeWhich(label)}>
            {PASSKEY_LIST.remove}
          </button>
        </form>
      </li>
    ))}
  </ul>
);

/** When and how a device was signed in, and used last. */
export const DeviceText = ({ device, time }: { readonly device: Device; readonly time: (at: number) => string }) => (
  <div class="faint">
    {DEVICE.opened(time(device.openedAt), device.passkey)}, {DEVICE.seen(time(device.seenAt))}
  </div>
);
