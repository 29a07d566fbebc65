import { decodeQR } from "qr/decode.js";
import { readJobNumber } from "#shared/shop/job-number.ts";
import { say } from "#src/in-browser/say.ts";

/** The detector of the browser itself, where it has one; not yet in the standard types. */
type Detector = { readonly detect: (source: HTMLVideoElement) => Promise<readonly { readonly rawValue: string }[]> };
type DetectorClass = {
  new (options: { readonly formats: readonly string[] }): Detector;
  readonly getSupportedFormats: () => Promise<readonly string[]>;
};
declare global {
  interface Window {
    readonly BarcodeDetector?: DetectorClass;
  }
}

/** A tag is held still for longer than this, and a phone stays cool. */
const BETWEEN_LOOKS_MS = 150;
/** A code that fills half of the picture is read at this width, and the library is quick with it. */
const LOOK_WIDTH = 640;

/** Reads what is in the picture; null = no code. */
type Look = (video: HTMLVideoElement) => Promise<string | null>;

const scan = document.getElementById("scan");
const start = document.getElementById("scan-start");
const stop = document.getElementById("scan-stop");
const picture = document.getElementById("scan-picture");
const video = document.getElementById("scan-video");
let stream: MediaStream | null = null;

// Over plain http the browser has no camera to offer, and typing is what is left.
if (scan && "mediaDevices" in navigator) scan.hidden = false;
start?.addEventListener("click", () => void open());
stop?.addEventListener("click", close);
addEventListener("pagehide", close);

async function open(): Promise<void> {
  if (!(video instanceof HTMLVideoElement)) return;
  say("");
  try {
    stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" } });
    video.srcObject = stream;
    await video.play();
  } catch {
    close();
    return say(scan?.dataset["noCamera"] ?? "");
  }
  show(true);
  const text = await firstCode(video, stream, await looker());
  if (text !== null) location.assign(`/shop/receive/find?number=${encodeURIComponent(text)}`);
}

/** The camera's light goes out, and the picture with it. */
function close(): void {
  for (const track of stream?.getTracks() ?? []) track.stop();
  stream = null;
  show(false);
}

function show(on: boolean): void {
  for (const part of [stop, picture]) if (part) part.hidden = !on;
  if (start) start.hidden = on;
}

/** Looks until there is the code of a tag, or the camera was stopped: then null. */
async function firstCode(from: HTMLVideoElement, opened: MediaStream, look: Look): Promise<string | null> {
  while (stream === opened) {
    const text = await look(from);
    if (text !== null && stream === opened) {
      if (isOfATag(text)) return text;
      say(scan?.dataset["notATag"] ?? "");
    }
    await new Promise((resolve) => setTimeout(resolve, BETWEEN_LOOKS_MS));
  }
  return null;
}

/** Whose tag it is the shop says; parcels carry other codes too. */
const isOfATag = (text: string): boolean => /[/]job[/][^/]+[/]?$/.test(text) || readJobNumber(text).ok;

async function looker(): Promise<Look> {
  const BarcodeDetector = window.BarcodeDetector;
  const formats = (await BarcodeDetector?.getSupportedFormats().catch(() => [])) ?? [];
  if (BarcodeDetector === undefined || !formats.includes("qr_code")) return lookByLibrary();
  const detector = new BarcodeDetector({ formats: ["qr_code"] });
  return async (from) => (await detector.detect(from).catch(() => []))[0]?.rawValue ?? null;
}

function lookByLibrary(): Look {
  const canvas = document.createElement("canvas");
  const context = canvas.getContext("2d", { willReadFrequently: true });
  return async (from) => {
    if (context === null || from.videoWidth === 0) return null;
    canvas.width = LOOK_WIDTH;
    canvas.height = Math.round((LOOK_WIDTH * from.videoHeight) / from.videoWidth);
    context.drawImage(from, 0, 0, canvas.width, canvas.height);
    try {
      return decodeQR(context.getImageData(0, 0, canvas.width, canvas.height));
    } catch {
      // The library throws where it finds no code.
      return null;
    }
  };
}
