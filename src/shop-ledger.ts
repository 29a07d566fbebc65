import { DurableObject } from "cloudflare:workers";

/** The shop's object: the single writer of its data. */
export class ShopLedger extends DurableObject<Env> {
  /** The number of tables its database holds. */
  tableCount(): number {
    return Number(this.ctx.storage.sql.exec("SELECT count(*) AS n FROM sqlite_schema").one()["n"]);
  }
}
