// Finds a Chromium, Chrome or Edge for the browser tests. Plain JavaScript: it runs before anything is installed.
import { spawnSync } from "node:child_process";
import { accessSync, constants } from "node:fs";
import { delimiter } from "node:path";

const NAMES = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "microsoft-edge"];
const PLACES = [
  ...(process.env.PATH ?? "").split(delimiter),
  "/usr/bin",
  "/usr/local/bin",
  "/snap/bin",
  "/opt/google/chrome",
  "/opt/microsoft/msedge",
];
const ELSEWHERE = [
  "/opt/google/chrome/chrome",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge",
];

/** The path of a browser, installed from Debian's packages where there is none and we may; else `null`. */
export function findBrowser() {
  const asked = process.env.CHROME_BIN;
  if (asked) return canRun(asked) ? asked : null;
  return installed() ?? (installFromDebian() ? installed() : null);
}

function installed() {
  const candidates = [...NAMES.flatMap((name) => PLACES.map((place) => `${place}/${name}`)), ...ELSEWHERE];
  return candidates.find(canRun) ?? null;
}

function canRun(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

function installFromDebian() {
  const isRoot = process.getuid?.() === 0;
  if (!isRoot || spawnSync("apt-get", ["--version"]).status !== 0) return false;
  console.log("Installing Debian's chromium …");
  const options = { stdio: "inherit", env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" } };
  return (
    spawnSync("apt-get", ["update", "-qq"], options).status === 0 &&
    spawnSync("apt-get", ["install", "-y", "-qq", "chromium"], options).status === 0
  );
}
