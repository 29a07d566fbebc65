import exifr from "exifr";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { MOST_PHOTO_BYTES } from "#shared/job/photo.ts";
import { cleanPhoto } from "#src/http/photo-bytes.ts";
import {
  exifSegment,
  JPEG,
  join,
  PNG,
  pngChunk,
  SECRET,
  segment,
  text,
  WEBP,
  webpChunk,
  withPngChunks,
  withSegments,
  withWebpChunks,
} from "#tests/support/photos.ts";

/** Everything the oracle knows how to read, but the colour profile and the size of the picture. */
const ALL = {
  tiff: true,
  ifd0: {},
  ifd1: true,
  exif: true,
  gps: true,
  interop: true,
  xmp: true,
  iptc: true,
  makerNote: true,
  userComment: true,
  ihdr: false,
  mergeOutput: true,
  translateValues: false,
  reviveValues: false,
} as const;
const tagsOf = async (bytes: Uint8Array): Promise<object> => ((await exifr.parse(bytes, ALL)) as object) ?? {};

function cleaned(bytes: Uint8Array): Uint8Array {
  const clean = cleanPhoto(bytes);
  if (!clean.ok) throw new Error(clean.refusal.reason);
  return clean.value.bytes;
}
const holds = (bytes: Uint8Array, words: string) => Buffer.from(bytes).includes(words);

const XMP = text(
  `http://ns.adobe.com/xap/1.0/\0<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description xmlns:dc="http://purl.org/dc/elements/1.1/" dc:creator="${SECRET}"/></rdf:RDF></x:xmpmeta>`,
);
const PROFILE = segment(0xe2, text("ICC_PROFILE\0\u0001\u0001a profile of colours"));
const COLOURS = segment(0xee, [...text("Adobe"), 0, 100, 0, 0, 0, 0, 1]);

describe("a JPEG as a phone takes it", () => {
  const taken = join(
    withSegments(
      JPEG,
      exifSegment(1),
      segment(0xe1, XMP),
      PROFILE,
      segment(0xe2, text(`MPF\0${SECRET}`)),
      segment(0xed, text(SECRET)),
      segment(0xfe, text(SECRET)),
      COLOURS,
    ),
    text(`a film hung on behind, of ${SECRET}`),
  );

  it("tells the oracle a place, an owner and a time before, and nothing after", async () => {
    expect(await tagsOf(taken)).toMatchObject({ latitude: 44.5, longitude: -79.5, ImageDescription: SECRET });
    expect(await exifr.gps(taken)).toBeDefined();
    expect(await tagsOf(cleaned(taken))).toEqual({});
    expect(holds(cleaned(taken), SECRET)).toBe(false);
  });

  it("keeps the pixels, the colour profile and the colour transform to the byte", () => {
    expect(cleaned(taken)).toEqual(withSegments(JPEG, PROFILE, COLOURS));
    expect(cleaned(JPEG)).toEqual(JPEG);
  });

  it.each([2, 3, 4, 5, 6, 7, 8])("keeps that it is to be turned (%d), and no other tag", async (orientation) => {
    const clean = cleaned(withSegments(JPEG, exifSegment(orientation), segment(0xe1, XMP)));
    expect(await tagsOf(clean)).toEqual({ Orientation: orientation });
    expect(await exifr.gps(clean)).toBeUndefined();
  });

  it("is shown no thumbnail of what was cut away", () => {
    const small = segment(0xe0, [...text("JFIF\0"), 1, 1, 0, 0, 1, 0, 1, 1, 1, 9, 9, 9]);
    expect(cleaned(join(JPEG.subarray(0, 2), small, JPEG.subarray(20)))).toEqual(JPEG);
  });
});

describe("a PNG", () => {
  const taken = join(
    withPngChunks(
      PNG,
      pngChunk("eXIf", exifSegment().subarray(10)),
      ...["tEXt", "iTXt", "zTXt", "tIME", "vpAg"].map((name) => pngChunk(name, text(`Comment\0${SECRET}`))),
      pngChunk("gAMA", [0, 0, 177, 143]),
    ),
    text(SECRET),
  );

  it("keeps what makes the picture and its colours, and nothing else", async () => {
    expect(await tagsOf(taken)).toMatchObject({ latitude: 44.5 });
    expect(await tagsOf(cleaned(taken))).toEqual({});
    expect(cleaned(taken)).toEqual(withPngChunks(PNG, pngChunk("gAMA", [0, 0, 177, 143])));
    expect(cleaned(PNG)).toEqual(PNG);
  });
});

describe("a WebP", () => {
  it("keeps its picture and profile, and announces no Exif and no XMP any more", () => {
    const profile = webpChunk("ICCP", text("a profile"));
    const taken = join(
      withWebpChunks(
        WEBP,
        profile,
        webpChunk("EXIF", exifSegment().subarray(10)),
        webpChunk("XMP ", XMP),
        webpChunk("JUNK", text(SECRET)),
      ),
      text(SECRET),
    );
    const clean = cleaned(taken);
    const expected = withWebpChunks(WEBP, profile);
    expected[20] = 0;
    expect(clean).toEqual(expected);
    expect(holds(clean, SECRET)).toBe(false);
    expect(cleaned(WEBP)).toEqual(WEBP);
  });
});

const content = fc.uint8Array({ maxLength: 40 });
const planted: readonly (readonly [string, Uint8Array, fc.Arbitrary<Uint8Array>])[] = [
  [
    "JPEG",
    JPEG,
    fc
      .array(fc.tuple(fc.constantFrom(0xe1, 0xe2, 0xe3, 0xe5, 0xec, 0xed, 0xef, 0xf0, 0xfe), content))
      .map((segments) => withSegments(JPEG, ...segments.map(([marker, bytes]) => segment(marker, bytes)))),
  ],
  [
    "PNG",
    PNG,
    fc
      .array(fc.tuple(fc.stringMatching(/^[a-s][a-zA-Z]{3}$/), content))
      .map((chunks) =>
        chunks.filter(([name]) => !["cHRM", "gAMA", "iCCP", "cICP", "pHYs", "sBIT", "sRGB"].includes(name)),
      )
      .map((chunks) => withPngChunks(PNG, ...chunks.map(([name, bytes]) => pngChunk(name, bytes)))),
  ],
];

describe("whatever is hung on a photo", () => {
  it.each(planted)("leaves the same %s as if it had never been there", (_, plain, arbitrary) => {
    fc.assert(
      fc.property(arbitrary, (bytes) => {
        expect(cleaned(bytes)).toEqual(plain);
      }),
    );
  });

  it.each([
    ["JPEG", withSegments(JPEG, exifSegment(6), PROFILE)],
    ["PNG", withPngChunks(PNG, pngChunk("tEXt", text(SECRET)))],
    ["WebP", withWebpChunks(WEBP, webpChunk("EXIF", text(SECRET)))],
  ])("is gone after the first time: a clean %s stays as it is", (_, bytes) => {
    expect(cleaned(cleaned(bytes))).toEqual(cleaned(bytes));
  });
});

describe("bytes that are no photo", () => {
  it.each([
    ["nothing", new Uint8Array(), "empty"],
    ["a page that calls itself a photo", text("<!doctype html><script>alert(1)</script>"), "not-a-photo"],
    ["a GIF", text("GIF89a\u0001\0\u0001\0"), "not-a-photo"],
    ["a HEIC", join([0, 0, 0, 24], text("ftypheic")), "not-a-photo"],
    ["an SVG", text('<svg xmlns="http://www.w3.org/2000/svg"/>'), "not-a-photo"],
    ["a sound in the container of WebP", join(text("RIFF"), [4, 0, 0, 0], text("WAVE")), "not-a-photo"],
    ["a JPEG without a picture", Uint8Array.from([0xff, 0xd8, 0xff, 0xd9]), "damaged"],
    ["a PNG without a picture", join(PNG.subarray(0, 33), pngChunk("IEND", [])), "damaged"],
    ["too much of it", new Uint8Array(MOST_PHOTO_BYTES + 1), "too-large"],
  ])("are refused: %s", (_, bytes, reason) => {
    expect(cleanPhoto(bytes)).toMatchObject({ ok: false, refusal: { reason } });
  });

  it.each([
    ["JPEG", JPEG],
    ["PNG", PNG],
    ["WebP", WEBP],
  ])("are refused wherever a %s breaks off", (_, whole) => {
    for (let length = 0; length < whole.length; length += 1) {
      expect([length, cleanPhoto(whole.subarray(0, length)).ok]).toEqual([length, false]);
    }
  });

  it("never make it fall over, whatever follows a right beginning", () => {
    const starts = fc.constantFrom(
      JPEG.subarray(0, 3),
      JPEG.subarray(0, 160),
      PNG.subarray(0, 33),
      WEBP.subarray(0, 20),
    );
    fc.assert(
      fc.property(starts, fc.uint8Array({ maxLength: 80 }), (start, rest) => {
        const clean = cleanPhoto(join(start, rest));
        if (clean.ok) expect(cleaned(clean.value.bytes)).toEqual(clean.value.bytes);
      }),
    );
  });
});
