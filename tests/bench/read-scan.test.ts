import * as fc from "fast-check";
import { expect, it } from "vitest";
import { jobNumber, nextSerial } from "#shared/shop/job-number.ts";
import { readScan, unswapped } from "#src/bench/receive/read-scan.ts";

const HERE = "https://shop.example";
const numbers = fc.nat(40_000_000).map((serial) => jobNumber(nextSerial(serial)));

it("reads a number that was typed, and the address in a tag's code", () => {
  for (const text of ["16JD", " 16-jd ", `${HERE}/job/16JD`, `${HERE}/job/16JD/`, `\n${HERE}/job/l6jd?x=1#y `])
    expect(readScan(text, HERE), text).toEqual({ ok: true, value: "16JD" });
});

it("says which kind of slip it was", () => {
  const slip = (text: string) => {
    const read = readScan(text, HERE);
    return read.ok ? null : read.refusal.reason;
  };
  expect(slip("")).toBe("not-a-job-number");
  expect(slip("fish & chips")).toBe("not-a-job-number");
  expect(slip("16JE")).toBe("check-symbol-wrong");
  expect(slip(`${HERE}/job/16JE`)).toBe("check-symbol-wrong");
  expect(slip(`${HERE}/tag/16JD`)).toBe("not-a-job-number");
  expect(slip("https://")).toBe("not-a-job-number");
  // Another shop's numbers look the same, and so does this site on a plain connection.
  expect(slip("https://other.example/job/16JD")).toBe("other-site");
  expect(slip("http://shop.example/job/16JD")).toBe("other-site");
});

it("finds every number two of whose neighbours were swapped", () => {
  fc.assert(
    fc.property(numbers, fc.nat(6), (number, at) => {
      const signs = [...number];
      const place = at % (signs.length - 1);
      const swapped = signs
        .with(place, signs[place + 1]!)
        .with(place + 1, signs[place]!)
        .join("");
      fc.pre(swapped !== number);
      expect(readScan(swapped, HERE).ok).toBe(false);
      expect(unswapped(swapped)).toContain(number);
      expect(unswapped(`${swapped.slice(0, 1)}-${swapped.slice(1).toLowerCase()}`)).toContain(number);
    }),
  );
});
