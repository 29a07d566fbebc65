import type { JobState } from "#shared/shop/job-state.ts";
import { ShopLedger } from "#src/shop-ledger.ts";
import { COMING, historySlots, QUANTA_PER_JOB } from "#tests/speed/speed-shop.ts";

/** The columns that number the rows: one more with every booking. */
const NUMBERS = {
  owner: ["id"],
  craft: ["id", "owner"],
  unit: ["id", "craft"],
  service: ["unit"],
  job: ["serial", "owner", "craft", "unit"],
  booking: ["job"],
  link: ["subject"],
} as const;

/** What else differs from booking to booking, in SQL over its number, key, bench and start. */
const CHANGED: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  job: { answers: "'{}'", plan: "'{}'" },
  booking: {
    id: "each.key",
    claim: "each.key",
    bench: "each.bench",
    from_quantum: "each.start",
    to_quantum: `each.start + ${QUANTA_PER_JOB}`,
  },
  link: { hash: "each.key" },
};

/** The n-th of a history of so many bookings, most of them past. */
export type Chapter = { readonly from: number; readonly to: number; readonly past: number };

/** The shop's object, with two doors more: for a long history, and to see whether it is at rest. */
export class FilledLedger extends ShopLedger {
  /**
   * Copies all rows of the very first booking, each time under numbers, keys and at a time of its own. What its owner
   * was told is left out, so that a million fit: it is long, and no look-up reads it.
   */
  fill({ from, to, past }: Chapter): void {
    const slot = historySlots(past, this.clock.now());
    // In order, so that they are quick to store, and spread over all keys there can be, where a new one falls between.
    const key = `printf('%08x', n * ${Math.floor(2 ** 32 / (past + COMING))})`;
    const each = `WITH RECURSIVE
      number (n) AS (SELECT ${from} UNION ALL SELECT n + 1 FROM number WHERE n + 1 < ${to}),
      each AS MATERIALIZED (SELECT n, ${key} AS key, ${slot.bench} AS bench, ${slot.from} AS start FROM number)`;
    const { sql } = this.ctx.storage;
    this.ctx.storage.transactionSync(() => {
      for (const [table, numbers] of Object.entries(NUMBERS)) {
        const columns = this.#columnsOf(table);
        const raised = Object.fromEntries(numbers.map((column) => [column, `first.${column} + 1 + n`]));
        const values = columns.map((column) => CHANGED[table]?.[column] ?? raised[column] ?? `first.${column}`);
        const first = `SELECT * FROM ${table} WHERE ${numbers[0]} = (SELECT min(${numbers[0]}) FROM ${table})`;
        sql.exec(`${each} INSERT INTO ${table} (${columns}) SELECT ${values} FROM each, (${first}) AS first`);
      }
      for (let quantum = 0; quantum < QUANTA_PER_JOB; quantum += 1) {
        sql.exec(
          `${each} INSERT INTO bench_time (bench, quantum, claim) SELECT bench, start + ${quantum}, key FROM each`,
        );
      }
    });
  }

  /** Has everything been told to everybody? What is told takes its time from whatever comes next. */
  isAtRest(): boolean {
    return Number(this.ctx.storage.sql.exec("SELECT count(*) AS n FROM publication").one()["n"]) === 0;
  }

  /** Moves every job that is in a state into another, as if its life had gone by. */
  age({ from, to }: { readonly from: JobState; readonly to: JobState }): void {
    this.ctx.storage.sql.exec("UPDATE job SET state = ? WHERE state = ?", to, from);
  }

  countJobs(): number {
    return Number(this.ctx.storage.sql.exec("SELECT count(*) AS n FROM job").one()["n"]);
  }

  #columnsOf(table: string): readonly string[] {
    return this.ctx.storage.sql.exec(`SELECT * FROM ${table} LIMIT 1`).columnNames;
  }
}
