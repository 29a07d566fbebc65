import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { encode } from "uqr";

const WIDTH = 640;
const HEIGHT = 480;
/** Pixels a module: the code fills about half of the picture. */
const SCALE = 8;
const GREY = 128;
const WHITE = 235;
const BLACK = 16;

/** A camera that sees a printed code, for a browser that is told so when it starts. */
export type FakeCamera = {
  readonly flags: readonly string[];
  /** Holds a code with this text before the camera; it is seen by whoever opens the camera next. */
  readonly show: (text: string) => void;
  readonly putAway: () => void;
};

export function fakeCamera(): FakeCamera {
  const folder = mkdtempSync(`${tmpdir()}/camera-`);
  const film = `${folder}/film.y4m`;
  return {
    flags: [
      "--use-fake-device-for-media-stream",
      "--use-fake-ui-for-media-stream",
      `--use-file-for-fake-video-capture=${film}`,
    ],
    show: (text) => writeFileSync(film, filmOf(text)),
    putAway: () => rmSync(folder, { recursive: true, force: true }),
  };
}

/** Two frames of uncompressed video (YUV4MPEG2, 4:2:0), white paper on a grey desk. */
function filmOf(text: string): Buffer {
  const { data, size } = encode(text, { ecc: "M", boostEcc: false, border: 4 });
  const left = Math.floor((WIDTH - size * SCALE) / 2);
  const top = Math.floor((HEIGHT - size * SCALE) / 2);
  const luma = Buffer.alloc(WIDTH * HEIGHT, GREY);
  for (let y = 0; y < size * SCALE; y += 1) {
    for (let x = 0; x < size * SCALE; x += 1) {
      const isDark = data[Math.floor(y / SCALE)]?.[Math.floor(x / SCALE)] === true;
      luma[(top + y) * WIDTH + left + x] = isDark ? BLACK : WHITE;
    }
  }
  const frame = Buffer.concat([Buffer.from("FRAME\n"), luma, Buffer.alloc((WIDTH * HEIGHT) / 2, GREY)]);
  return Buffer.concat([Buffer.from(`YUV4MPEG2 W${WIDTH} H${HEIGHT} F10:1 Ip A1:1 C420\n`), frame, frame]);
}
