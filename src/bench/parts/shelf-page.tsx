import { STOCK, STOCK_KINDS, shelfText } from "#shared/messages/stock-words.ts";
import { timeText } from "#shared/messages/time-words.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import type { StockLine } from "#shared/shop/stock.ts";
import type { StockEntry } from "#shared/shop/stock-wish.ts";
import { FactList } from "#src/bench/fact-list.tsx";
import { LabelledField } from "#src/bench/labelled-field.tsx";
import { shelfPath } from "#src/bench/parts/shelf-path.ts";
import { ProblemSummary } from "#src/bench/problem-summary.tsx";
import { ShopPage } from "#src/bench/shop-page.tsx";

export type ShelfForm = {
  readonly typed: Readonly<Record<string, string>>;
  /** What would be accepted, by field. */
  readonly problems: Readonly<Record<string, string>>;
};

type ShelfPageProps = {
  readonly settings: ShopSettings;
  readonly line: StockLine;
  readonly entries: readonly StockEntry[];
  readonly form: ShelfForm;
  /** Names the two forms, so that each counts once however often it is sent. */
  readonly wishes: readonly [receive: string, count: string];
  readonly notice?: string | undefined;
};

const LABELS: Readonly<Record<string, string>> = {
  count: STOCK.howMany,
  found: STOCK.found,
  why: STOCK.why,
};

/** One shelf: what is there, what came and went, and putting it right. */
export function ShelfPage({ settings, line, entries, form, wishes, notice }: ShelfPageProps) {
  const { front } = settings;
  const { typed, problems } = form;
  const text = (name: string, label: string, inputmode: "numeric" | "text", short = false) => (
    <LabelledField
      name={name}
      label={label}
      problem={problems[name]}
      short={short}
      control={(links) => (
        <input type="text" inputmode={inputmode} autocomplete="off" value={typed[name] ?? ""} {...links} />
      )}
    />
  );
  return (
    <ShopPage title={shelfText(line)} front={front}>
      {notice && (
        <p class="notice" role="status">
          {notice}
        </p>
      )}
      <ProblemSummary
        title={STOCK.mend}
        says={STOCK.notDone}
        problems={Object.keys(problems).map((field) => ({ field, label: LABELS[field] ?? field }))}
      />
      {line.countAgain && (
        <div class="signal note">
          <b>{STOCK.countAgain}</b>
          <p>{STOCK.countAgainSays}</p>
        </div>
      )}
      <FactList
        facts={[
          [STOCK.onHand, line.onHand],
          [STOCK.reserved, line.reserved],
          [STOCK.free, line.free],
          [STOCK.state, line.low ? STOCK.low : STOCK.enough],
        ]}
      />
      <div class="pair screen">
        <form method="post" action={`${shelfPath(line)}/receive`} novalidate>
          <h2>{STOCK.receive}</h2>
          <input type="hidden" name="wish" value={wishes[0]} />
          {text("count", STOCK.howMany, "numeric", true)}
          {text("from", STOCK.where, "text")}
          <button type="submit">{STOCK.receiveButton}</button>
        </form>
        <form method="post" action={`${shelfPath(line)}/count`} novalidate>
          <h2>{STOCK.count}</h2>
          <input type="hidden" name="wish" value={wishes[1]} />
          {text("found", STOCK.found, "numeric", true)}
          {text("why", STOCK.why, "text")}
          <button type="submit">{STOCK.countButton}</button>
        </form>
      </div>
      <Entries entries={entries} settings={settings} />
      <p class="screen">
        <a href="/shop/parts">{STOCK.back}</a>
      </p>
    </ShopPage>
  );
}

type EntriesProps = { readonly entries: readonly StockEntry[]; readonly settings: ShopSettings };

const Entries = ({ entries, settings: { front, calendar } }: EntriesProps) => (
  <>
    <h2>{STOCK.history}</h2>
    {entries.length === 0 ? (
      <p>{STOCK.noHistory}</p>
    ) : (
      <section class="scroll" aria-label={STOCK.history} tabindex={0}>
        <table>
          <thead>
            <tr>
              {[STOCK.when, STOCK.what, STOCK.change, STOCK.after, STOCK.who, STOCK.note].map((label) => (
                <th scope="col">{label}</th>
              ))}
            </tr>
          </thead>
          <tbody>
            {entries.map(({ at, kind, change, onHand, staff, job, note }) => (
              <tr>
                <td>{timeText(at, calendar.zone, front.locale)}</td>
                <td>{STOCK_KINDS[kind]}</td>
                <td>{change > 0 ? `+${change}` : change}</td>
                <td>{onHand}</td>
                <td>{staff}</td>
                <td>{job === null ? note : <a href={`/shop/jobs/${job}`}>{`${STOCK.job} ${job}`}</a>}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    )}
  </>
);
