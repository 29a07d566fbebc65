import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { hashStart, readRecordCode, recordCode } from "#shared/job/record-code.ts";
import { jobNumber, nextSerial } from "#shared/shop/job-number.ts";

const SYMBOLS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
const NOT_ONE = { ok: false, refusal: { reason: "not-a-code" } };

const jobs = fc.integer({ min: 1023, max: 2_000_000 }).map((serial) => jobNumber(nextSerial(serial)));
const hashes = fc.uint8Array({ minLength: 32, maxLength: 32 }).map((bytes) => Buffer.from(bytes).toString("hex"));

describe("a record's code", () => {
  it("holds the job's number and the first 80 bits of the hash", () => {
    fc.assert(
      fc.property(jobs, hashes, (job, hash) => {
        const code = recordCode(job, hash);
        expect(code).toMatch(new RegExp(`^${job}(-[${SYMBOLS}]{4}){4}-[${SYMBOLS}]$`));
        expect(readRecordCode(code)).toEqual({ ok: true, value: { job, hashStart: hashStart(hash) } });
        const bits = [...hashStart(hash)].map((it) => SYMBOLS.indexOf(it).toString(2).padStart(5, "0")).join("");
        expect(BigInt(`0b${bits}`)).toBe(BigInt(`0x${hash.slice(0, 20)}`));
      }),
    );
  });

  it("is read from a careless hand", () => {
    expect(recordCode("16JD", "ba7816bf8f01cfea414140de5dae2223")).toBe("16JD-Q9W1-DFWF-077Y-MGA1-J");
    for (const typed of ["16jdq9w1dfwf077ymga1j", " l6jd q9wI dfwf O77y mgaI j ", "16JD--Q9W1-DFWF-077Y-MGA1-J"]) {
      expect(readRecordCode(typed)).toEqual({ ok: true, value: { job: "16JD", hashStart: "Q9W1DFWF077YMGA1" } });
    }
  });

  it("with any one symbol wrong, or any two swapped, is refused", () => {
    fc.assert(
      fc.property(jobs, hashes, (job, hash) => {
        const plain = recordCode(job, hash).replaceAll("-", "");
        for (const [at, right] of [...plain].entries()) {
          for (const wrong of SYMBOLS.replace(right, "")) {
            expect(readRecordCode(plain.slice(0, at) + wrong + plain.slice(at + 1)).ok).toBe(false);
          }
          for (let to = at + 1; to < plain.length; to += 1) {
            if (plain[to] === right) continue;
            const swapped = [...plain].with(at, plain[to]!).with(to, right).join("");
            expect(readRecordCode(swapped).ok).toBe(false);
          }
        }
      }),
      { numRuns: 10 },
    );
  });

  it("is never more than such symbols in such a number", () => {
    for (const text of [
      "",
      "16JD",
      "Q9W1-DFWF-077Y-MGA1-J",
      "U6JD-Q9W1-DFWF-077Y-MGA1-J",
      "16JD-Q9W1-DFWF-077Y-MGA1-*",
    ]) {
      expect(readRecordCode(text)).toEqual(NOT_ONE);
    }
    expect(readRecordCode(`${"0".repeat(4)}16JDQ9W1DFWF077YMGA1J`).ok).toBe(false);
  });
});
