import { DurableObject } from "cloudflare:workers";
import type { BookingWish } from "#shared/shop/booking.ts";

/** An object that does nothing but keep one small row a call. It is sent the same wish, so that sending costs the same. */
export class BareObject extends DurableObject {
  constructor(state: DurableObjectState, env: unknown) {
    super(state, env as Cloudflare.Env);
    state.storage.sql.exec("CREATE TABLE IF NOT EXISTS kept (serial INTEGER PRIMARY KEY, id TEXT NOT NULL) STRICT");
  }

  insert(wish: BookingWish): { readonly ok: true; readonly id: string } {
    this.ctx.storage.sql.exec("INSERT INTO kept (id) VALUES (?)", wish.id);
    return { ok: true, id: wish.id };
  }
}
