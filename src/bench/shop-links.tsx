import { useContext } from "hono/jsx";
import { ARRIVALS } from "#shared/messages/shop-arrival-words.ts";
import { CALLER } from "#shared/messages/shop-caller-words.ts";
import { DAY } from "#shared/messages/shop-day-words.ts";
import { RECEIVE } from "#shared/messages/shop-receive-words.ts";
import { CHAIN } from "#shared/messages/shop-record-words.ts";
import { SETTINGS } from "#shared/messages/shop-settings-words.ts";
import { ACCOUNT, STAFF } from "#shared/messages/shop-staff-words.ts";
import { SHOP_NAV } from "#shared/messages/shop-words.ts";
import { STOCK } from "#shared/messages/stock-words.ts";
import { AtWork } from "#src/bench/at-work.tsx";
import { mayReach } from "#src/bench/permissions.ts";

const LINKS = [
  ["/shop", DAY.title],
  ["/shop/receive", RECEIVE.title],
  ["/shop/arrivals", ARRIVALS.title],
  ["/shop/book", CALLER.title],
  ["/shop/records", CHAIN.title],
  ["/shop/parts", STOCK.title],
  ["/shop/settings", SETTINGS.title],
  ["/shop/staff", STAFF.title],
  ["/shop/account", ACCOUNT.link],
] as const;

/** The shop's main pages, as far as who looks may open them; a stranger sees none. */
export function ShopLinks() {
  const staff = useContext(AtWork);
  if (staff === null) return null;
  return (
    <nav aria-label={SHOP_NAV}>
      {LINKS.filter(([path]) => mayReach(staff.role, path)).map(([path, title]) => (
        <a href={path}>{title}</a>
      ))}
    </nav>
  );
}
