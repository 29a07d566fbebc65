// `node src/local/begin.mjs start | sign-in | speed`: installs what is missing, then runs the TypeScript file on the right Node.
import { spawn } from "node:child_process";
import { constants } from "node:os";
import { whenAskedToEnd } from "./asked-to-end.mjs";
import { installWhatIsMissing, ROOT, rightNode, stop, toolEnvironment } from "./install.mjs";

const FILES = { start: "src/local/start.ts", "sign-in": "src/local/sign-in.ts", speed: "tests/speed/run.ts" };
const PATIENCE_MS = 5_000;

const [name = "", ...rest] = process.argv.slice(2);
const file = FILES[name] ?? stop(`Say one of: ${Object.keys(FILES).join(", ")}.`);
await installWhatIsMissing();
const node = rightNode();

// In a session of its own, so that a Ctrl-C reaches it once, through us, and not its runtime before it.
const child = spawn(node, ["--disable-warning=ExperimentalWarning", `${ROOT}${file}`, ...rest], {
  stdio: ["ignore", "inherit", "inherit", "ipc"],
  env: toolEnvironment(node),
  detached: true,
});

let runtimePid = null;
child.on("message", (message) => {
  if ("runtimePid" in message) runtimePid = message.runtimePid;
});
child.on("error", (error) => stop(`${node} could not be started: ${error.message}`));
child.on("exit", (code, signal) => {
  if (runtimePid !== null) endRuntime(runtimePid);
  process.exit(code ?? 128 + constants.signals[signal]);
});

whenAskedToEnd((signal) => {
  child.kill(signal);
  setTimeout(() => child.kill("SIGKILL"), PATIENCE_MS).unref();
});

/** It is gone already, unless the child was killed before it could end it. */
function endRuntime(pid) {
  try {
    process.kill(pid, "SIGKILL");
  } catch {}
}
