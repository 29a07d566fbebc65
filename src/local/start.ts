import { keysOf } from "#src/local/keys.ts";
import { isFree } from "#src/local/port.ts";
import { endProcess, identify, type ProcessIdentity } from "#src/local/process-identity.ts";
import { forgetRunning, lastRunning, noteRunning } from "#src/local/running.ts";
import { type Runtime, startRuntime } from "#src/local/runtime.ts";
import { seedDemo } from "#src/local/seed-demo.ts";
import { byName, signInLink } from "#src/local/sign-in-link.ts";
import { type StartSettings, startSettings } from "#src/local/start-settings.ts";
import { openStateFolder } from "#src/local/state-folder.ts";
import { lockState } from "#src/local/state-lock.ts";
import { bundleWorker } from "#src/local/worker-bundle.ts";
import { workerOptions } from "#src/local/worker-options.ts";

const settings = startSettings(process.env);
if (!settings.ok) stop(settings.refusal);
const folder = openStateFolder();
const lock = lockState(folder);
const previous = lastRunning(folder);
if (!lock.ok) stop(`A shop runs on the state in ${folder} already, as process ${previous?.holder.pid ?? "unknown"}.`);
const { release } = lock.value;
const { port, demo } = settings.value;
if (port !== 0 && !(await isFree(port))) stop(`Port ${port} is in use by another program: choose another with PORT=…`);
// A start that was killed leaves its runtime behind, and that one still has the state open.
if (previous?.runtime) await endProcess(previous.runtime);

let runtime: Runtime | null = null;
for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"] as const) process.on(signal, () => void end(0));
process.on("disconnect", () => void end(0));

const keys = keysOf(folder);
runtime = await run(settings.value, keys.LINK_KEY).catch((error) => stop(`The shop did not start: ${error.message}`));
if (demo) await seedDemo(runtime.origin, folder, keys.LINK_KEY);
console.log(`For owners: ${runtime.origin}/`);
console.log(`Shop sign-in, once, within 10 minutes: ${await signInLink(byName(runtime.origin), keys.LINK_KEY)}`);
console.log("Another sign-in link: npm run sign-in. To end: Ctrl-C.");

async function run(asked: StartSettings, linkKey: string): Promise<Runtime> {
  const holder = identify(process.pid);
  if (holder === null) throw new Error("this system does not say when a process began.");
  const vars = {
    LINK_KEY: linkKey,
    PUBLIC_ORIGIN: asked.publicOrigin,
    OPEN_HOLDS_PER_SOURCE: asked.openHoldsPerSource,
  };
  const script = await bundleWorker();
  let origin: string | null = null;
  let latest: ProcessIdentity | null = null;
  const note = () => noteRunning(folder, { holder, origin, runtime: latest });
  const started = await startRuntime({
    port: asked.port,
    optionsFor: (onPort) =>
      workerOptions({
        script,
        port: onPort,
        stateFolder: `${folder}/state`,
        requestsPerMinute: asked.requestsPerMinute,
        vars,
      }),
    onStart: (it) => {
      latest = it;
      note();
      process.send?.({ runtimePid: it.pid });
    },
    say: (sentence) => console.error(sentence),
    onGiveUp: () => void end(1),
  });
  origin = started.origin;
  note();
  return started;
}

/** A second signal, or a parent that goes as well, changes nothing: the first end goes on. */
async function end(code: number): Promise<void> {
  process.removeAllListeners("disconnect");
  for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"]) process.removeAllListeners(signal).on(signal, () => {});
  await runtime?.end();
  forgetRunning(folder);
  release();
  process.exit(code);
}

function stop(sentence: string): never {
  console.error(sentence);
  process.exit(1);
}
