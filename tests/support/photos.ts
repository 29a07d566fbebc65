/** Pictures of 16 by 8 pixels, the left half red and the right half blue, as a browser's canvas writes them. */
const bytesOf = (base64: string) => Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));

/** Baseline, with a JFIF header. */
export const JPEG = bytesOf(
  "/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDAAYEBQYFBAYGBQYHBwYIChAKCgkJChQODwwQFxQYGBcUFhYaHSUfGhsjHBYWICwgIyYn" +
    "KSopGR8tMC0oMCUoKSj/2wBDAQcHBwoIChMKChMoGhYaKCgoKCgoKCgoKCgoKCgoKCgoKCgoKCgoKCgoKCgoKCgoKCgoKCgoKCgo" +
    "KCgoKCgoKCj/wAARCAAIABADASIAAhEBAxEB/8QAFgABAQEAAAAAAAAAAAAAAAAAAAYH/8QAFBABAAAAAAAAAAAAAAAAAAAAAP/E" +
    "ABQBAQAAAAAAAAAAAAAAAAAAAAb/xAAZEQACAwEAAAAAAAAAAAAAAAAAB0SCwoP/2gAMAwEAAhEDEQA/AM6QAGCnl89j1mxb4P/Z",
);

/** Eight bits, with alpha. */
export const PNG = bytesOf(
  "iVBORw0KGgoAAAANSUhEUgAAABAAAAAICAYAAADwdn+XAAAAJ0lEQVR4AeyQoQ0AAAjDmv3/c/kABALDkqkmFY1g9wEblnsB3Dco" +
    "AAAA//9LtzGOAAAABklEQVQDALr0H/FxgNKIAAAAAElFTkSuQmCC",
);

/** Lossy, in the simple layout. */
export const WEBP = bytesOf(
  "UklGRjwAAABXRUJQVlA4IDAAAABwAQCdASoQAAgAAsBMJaACdAFAAAD+8Ms//o+//rb//Wh/rb+tt/9tD03//rQTQAA=",
);

/** Where the camera was, who owns it, and when it looked: what no photo may keep. */
export const SECRET = "Ada Quill, 7 Reed Street";

const ascii = (text: string) => [...text].map((letter) => letter.charCodeAt(0));
export const big = (value: number, width: 2 | 4) =>
  width === 2 ? [value >> 8, value & 255] : [value >>> 24, (value >> 16) & 255, (value >> 8) & 255, value & 255];
const little = (value: number) => big(value, 4).reverse();

export const join = (...pieces: readonly ArrayLike<number>[]) =>
  Uint8Array.from(pieces.flatMap((piece) => [...Array.from(piece)]));

/** A JPEG segment: marker, length, content. */
export const segment = (marker: number, content: ArrayLike<number>) =>
  join([0xff, marker], big(content.length + 2, 2), content);

/** Exif as a phone writes it: maker, owner's remark, time, orientation, and the place. */
export function exifSegment(orientation = 1): Uint8Array {
  const text = (value: string) => ascii(`${value}\0`);
  const [make, remark, time] = [text("Maker of cameras"), text(SECRET), text("2027:05:03 10:00:00")];
  const entries = 5;
  const data = 8 + 2 + entries * 12 + 4;
  const gps = data + make.length + remark.length + time.length;
  const entry = (tag: number, type: number, count: number, value: readonly number[]) => [
    ...big(tag, 2),
    ...big(type, 2),
    ...big(count, 4),
    ...value,
  ];
  const degrees = (value: number) => [
    ...big(value, 4),
    ...big(1, 4),
    ...big(30, 4),
    ...big(1, 4),
    ...big(0, 4),
    ...big(1, 4),
  ];
  const place = gps + 2 + 4 * 12 + 4;
  const tiff = [
    ...ascii("MM"),
    ...big(42, 2),
    ...big(8, 4),
    ...big(entries, 2),
    ...entry(0x010e, 2, remark.length, big(data + make.length, 4)),
    ...entry(0x010f, 2, make.length, big(data, 4)),
    ...entry(0x0112, 3, 1, [...big(orientation, 2), 0, 0]),
    ...entry(0x0132, 2, time.length, big(data + make.length + remark.length, 4)),
    ...entry(0x8825, 4, 1, big(gps, 4)),
    ...big(0, 4),
    ...make,
    ...remark,
    ...time,
    ...big(4, 2),
    ...entry(1, 2, 2, ascii("N\0\0\0")),
    ...entry(2, 5, 3, big(place, 4)),
    ...entry(3, 2, 2, ascii("W\0\0\0")),
    ...entry(4, 5, 3, big(place + 24, 4)),
    ...big(0, 4),
    ...degrees(44),
    ...degrees(79),
  ];
  return segment(0xe1, [...ascii("Exif\0\0"), ...tiff]);
}

/** Puts segments right behind a JPEG's JFIF header, where cameras put them. */
export const withSegments = (jpeg: Uint8Array, ...segments: readonly Uint8Array[]) =>
  join(jpeg.subarray(0, 20), ...segments, jpeg.subarray(20));

/** A PNG chunk; its check sum is not right, and nobody here reads it. */
export const pngChunk = (name: string, content: ArrayLike<number>) =>
  join(big(content.length, 4), ascii(name), content, [0, 0, 0, 0]);

/** Puts chunks behind a PNG's header. */
export const withPngChunks = (png: Uint8Array, ...chunks: readonly Uint8Array[]) =>
  join(png.subarray(0, 33), ...chunks, png.subarray(33));

export const webpChunk = (name: string, content: ArrayLike<number>) =>
  join(ascii(name), little(content.length), content, content.length % 2 === 1 ? [0] : []);

/** The extended layout, which announces Exif and XMP, with chunks behind the picture. */
export function withWebpChunks(webp: Uint8Array, ...chunks: readonly Uint8Array[]): Uint8Array {
  const size = [15, 0, 0, 7, 0, 0];
  const content = join(webpChunk("VP8X", [0x0c, 0, 0, 0, ...size]), webp.subarray(12), ...chunks);
  return join(ascii("RIFF"), little(content.length + 4), ascii("WEBP"), content);
}

export const text = (value: string) => Uint8Array.from(ascii(value));
