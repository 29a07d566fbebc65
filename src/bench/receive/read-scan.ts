import { type Outcome, refuse } from "#shared/basics/outcome.ts";
import { type JobNumberRefusal, readJobNumber } from "#shared/shop/job-number.ts";

export type ScanRefusal = JobNumberRefusal | { readonly reason: "other-site" };

/**
 * The job number in what was typed or scanned: the number itself, or the address that a tag's code holds. An address of
 * another site is not believed: another shop's numbers look the same.
 * @example readScan("http://shop.example/job/16JD", "http://shop.example") // { ok: true, value: "16JD" }
 */
export function readScan(text: string, origin: string): Outcome<string, ScanRefusal> {
  const plain = text.trim();
  if (!/^https?:/i.test(plain)) return readJobNumber(plain);
  const address = URL.parse(plain);
  if (address === null) return refuse({ reason: "not-a-job-number" });
  if (address.origin !== origin) return refuse({ reason: "other-site" });
  const number = /^\/job\/([^/]+)\/?$/.exec(address.pathname)?.[1];
  return number === undefined ? refuse({ reason: "not-a-job-number" }) : readJobNumber(number);
}

/**
 * What was meant, if two neighbouring signs were swapped: the numbers whose check symbol fits then.
 * @example unswapped("61JD") // ["16JD"]
 */
export function unswapped(typed: string): readonly string[] {
  const signs = [...typed.replace(/[\s-]/g, "")];
  const swaps = signs.slice(1).map((_, at) =>
    signs
      .with(at, signs[at + 1] ?? "")
      .with(at + 1, signs[at] ?? "")
      .join(""),
  );
  const read = swaps.map((swap) => readJobNumber(swap)).flatMap((it) => (it.ok ? [it.value] : []));
  return [...new Set(read)];
}
