/** RFC 5545 §3.1: a line should be no longer than 75 octets, its line break not counted. */
const MOST_OCTETS = 75;
const TAB = 0x09;
const FIRST_PRINTABLE = 0x20;
const DELETE = 0x7f;

/**
 * Folds one content line: each piece but the first starts with a space, and no character is cut in two.
 * Control characters are dropped, so that no value can start a line of its own.
 */
export function foldLine(line: string): string {
  const pieces: string[] = [];
  let piece = "";
  let octets = 0;
  for (const character of line) {
    const code = character.codePointAt(0) ?? 0;
    if ((code < FIRST_PRINTABLE && code !== TAB) || code === DELETE) continue;
    const size = utf8Octets(code);
    if (octets + size > MOST_OCTETS) {
      pieces.push(piece);
      piece = " ";
      octets = 1;
    }
    piece += character;
    octets += size;
  }
  return `${[...pieces, piece].join("\r\n")}\r\n`;
}

/** RFC 5545 §3.3.11. Colons and quotes stay as they are. @example escapeText("tag; label") // "tag\\; label" */
export const escapeText = (text: string): string => text.replace(/[\\;,]/g, "\\$&").replace(/\r\n|\r|\n/g, "\\n");

/** RFC 5545 §3.3.5, form 2. @example utcStamp(0) // "19700101T000000Z" */
export const utcStamp = (instant: number): string =>
  `${new Date(instant).toISOString().slice(0, "YYYY-MM-DDThh:mm:ss".length).replace(/[-:]/g, "")}Z`;

function utf8Octets(code: number): number {
  if (code < 0x80) return 1;
  if (code < 0x800) return 2;
  return code < 0x10000 ? 3 : 4;
}
