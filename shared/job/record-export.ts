import type { ChainEntry } from "#shared/job/record-chain.ts";

/**
 * An entry of the chain as one line of JSON. The body stands in it byte for byte as it was hashed: cut it out between
 * `"body":` and the last `,"hash":"`, and nothing has to be parsed to check it.
 * @example chainLine({ step: 1, before: "00…", body: '{"a":1}', hash: "5f…" })
 *   // '{"before":"00…","body":{"a":1},"hash":"5f…","step":1}'
 */
export const chainLine = ({ step, before, body, hash }: ChainEntry): string =>
  `{"before":"${before}","body":${body},"hash":"${hash}","step":${step}}`;
