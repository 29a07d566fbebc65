import { createHash } from "node:crypto";
import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { canonicalJson, type Json } from "#shared/basics/canonical-json.ts";
import { CHAIN_START, type ChainEntry, chainHash, checkChain, GENESIS, nextEntry } from "#shared/job/record-chain.ts";

const ofNode = (bytes: string | Uint8Array) => createHash("sha256").update(bytes).digest("hex");

describe("SHA-256", () => {
  // NIST, "Secure Hash Standard" example values (FIPS 180-4, SHA-256), and the byte-oriented short messages of the
  // Secure Hash Algorithm Validation System (SHAVS): lengths 0, 8, 16 and 24 bits.
  it.each([
    ["abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"],
    [
      "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
      "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
    ],
    ["", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"],
    ["a".repeat(1_000_000), "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0"],
  ])("of %.20s is as published", (message, hash) => {
    expect(bytesToHex(sha256(utf8ToBytes(message)))).toBe(hash);
  });

  it.each([
    ["d3", "28969cdfa74a12c82f3bad960b0b000aca2ac329deea5c2328ebc6f2ba9802c1"],
    ["11af", "5ca7133fa735326081558ac312c620eeca9970d1e70a4b95533d956f072d1f98"],
    ["b4190e", "dff2e73091f6c05e528896c4c831b9448653dc2ff043528f6769437bc7b975c2"],
  ])("of the bytes %s is as published", (hex, hash) => {
    expect(bytesToHex(sha256(Uint8Array.from(Buffer.from(hex, "hex"))))).toBe(hash);
  });

  it("agrees with another implementation on any bytes", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        expect(bytesToHex(sha256(bytes))).toBe(ofNode(bytes));
      }),
    );
  });
});

const bodies = fc.array(
  fc.jsonValue().map((it) => canonicalJson(JSON.parse(JSON.stringify(it)) as Json)),
  {
    minLength: 1,
    maxLength: 8,
  },
);

function chainOf(all: readonly string[]): readonly ChainEntry[] {
  const entries: ChainEntry[] = [];
  for (const body of all) entries.push(nextEntry(entries.at(-1) ?? CHAIN_START, body));
  return entries;
}

describe("the chain", () => {
  it("hashes the hash before, a line feed and the body: nothing else", () => {
    fc.assert(
      fc.property(bodies, (all) => {
        let before = "0".repeat(64);
        for (const entry of chainOf(all)) {
          expect(entry.before).toBe(before);
          expect(entry.hash).toBe(ofNode(`${before}\n${entry.body}`));
          before = entry.hash;
        }
      }),
    );
    expect(GENESIS).toBe("0".repeat(64));
    expect(chainHash(GENESIS, "{}")).toBe(ofNode(`${GENESIS}\n{}`));
  });

  it("is whole as it was made, from its start and from any mark on it", () => {
    fc.assert(
      fc.property(bodies, fc.nat(7), (all, at) => {
        const entries = chainOf(all);
        const end = entries.at(-1)!;
        const whole = { whole: true, upTo: { step: end.step, hash: end.hash } };
        expect(checkChain(CHAIN_START, entries)).toEqual(whole);
        const mark = entries[Math.min(at, entries.length - 1)]!;
        expect(checkChain(mark, entries.slice(mark.step))).toEqual(whole);
      }),
    );
  });

  it("breaks at the entry of any changed byte", () => {
    const entries = chainOf(['{"a":1,"note":"é"}', '{"slip":17.85}', '{"why":"typed wrong"}']);
    let flips = 0;
    for (const [index, entry] of entries.entries()) {
      for (const field of ["before", "body", "hash"] as const) {
        const bytes = Buffer.from(entry[field]);
        for (let at = 0; at < bytes.length; at += 1) {
          for (let bit = 0; bit < 8; bit += 1) {
            const changed = Buffer.from(bytes);
            changed[at]! ^= 1 << bit;
            const broken = entries.with(index, { ...entry, [field]: changed.toString("utf8") });
            expect(checkChain(CHAIN_START, broken)).toEqual({ whole: false, brokenAt: entry.step });
            flips += 1;
          }
        }
      }
    }
    expect(flips).toBeGreaterThan(3000);
  });

  it("breaks where an entry was cut out and the others numbered anew, and where a number alone was changed", () => {
    const entries = chainOf(["1", "2", "3", "4"]);
    const closed = entries.toSpliced(1, 1).map((entry, index) => ({ ...entry, step: index + 1 }));
    expect(checkChain(CHAIN_START, closed)).toEqual({ whole: false, brokenAt: 2 });
    const renumbered = entries.map((entry) => (entry.step === 4 ? { ...entry, step: 5 } : entry));
    expect(checkChain(CHAIN_START, renumbered)).toEqual({ whole: false, brokenAt: 4 });
  });

  it("breaks where an entry is dropped, doubled, put elsewhere or put in, unless it is cut off at its end", () => {
    fc.assert(
      fc.property(bodies, fc.nat(), fc.nat(), (all, one, other) => {
        const entries = chainOf([...all, "{}", "[]"]);
        const [from, to] = [one % (entries.length - 1), other % entries.length];
        expect(checkChain(CHAIN_START, entries.toSpliced(from, 1))).toEqual({ whole: false, brokenAt: from + 1 });
        expect(checkChain(CHAIN_START, entries.toSpliced(to, 0, entries[to]!)).whole).toBe(false);
        if (from !== to) {
          const swapped = entries.with(from, entries[to]!).with(to, entries[from]!);
          expect(checkChain(CHAIN_START, swapped)).toEqual({ whole: false, brokenAt: Math.min(from, to) + 1 });
        }
        const forged = entries.toSpliced(to, 0, nextEntry(entries[to - 1] ?? CHAIN_START, '"forged"'));
        expect(checkChain(CHAIN_START, forged)).toEqual({ whole: false, brokenAt: to + 2 });
        expect(checkChain(CHAIN_START, entries.slice(0, -1)).whole).toBe(true);
      }),
    );
  });
});
