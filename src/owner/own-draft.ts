import type { Context } from "hono";
import { step } from "#shared/intake/conversation.ts";
import type { Circumstances } from "#shared/intake/questions.ts";
import type { StoredDraft } from "#shared/shop/booking.ts";
import { circumstancesOf } from "#shared/shop/circumstances.ts";
import type { SettingsVersion, ShopSettings } from "#shared/shop/shop-settings.ts";
import { readCookie, writeCookie } from "#src/http/cookies.ts";
import { sha256Hex } from "#src/http/owner-link.ts";
import type { OwnerNeeds } from "#src/owner/owner-needs.ts";

/** A conversation can be gone on with for so long after its last answer. */
export const DRAFT_SECONDS = 14 * 86_400;

/** What a page of the conversation starts from: the shop, the moment, and this owner's answers. */
export type Sitting = {
  readonly settings: ShopSettings;
  readonly settingsVersion: SettingsVersion["version"];
  readonly now: Circumstances;
  /** Null before the first answer. */
  readonly token: string | null;
  readonly tokenHash: string | null;
  readonly stored: StoredDraft;
};

const NOTHING_YET: StoredDraft = { draft: {}, hold: null, booked: false, expiresAt: 0 };

/** Reads the owner's cookie and what is kept under it; answers that no longer apply are left out at once. */
export async function sittingOf(c: Context, needs: OwnerNeeds): Promise<Sitting> {
  const cookie = readCookie(c, "draft", needs.origin(c.req.raw));
  const tokenHash = cookie === undefined ? null : await sha256Hex(cookie);
  const [{ settings, version }, stored] = await Promise.all([
    needs.shop.settings(),
    tokenHash === null ? null : needs.shop.draft(tokenHash),
  ]);
  const now = circumstancesOf(settings, needs.now());
  const known = stored ?? NOTHING_YET;
  return {
    settings,
    settingsVersion: version,
    now,
    token: stored === null ? null : (cookie ?? null),
    tokenHash: stored === null ? null : tokenHash,
    stored: { ...known, draft: step(known.draft, now).draft },
  };
}

/** Lets this browser go on with the conversation of a token. */
export const keepToken = (c: Context, needs: OwnerNeeds, token: string): void =>
  writeCookie(c, "draft", token, { origin: needs.origin(c.req.raw), seconds: DRAFT_SECONDS });
