// `npm test`: installs what is missing, then runs every check and every test, and counts them together.
// Arguments go to the test runner: `npm test -- tests/slip` runs the checks and the tests of that folder.
import { spawn, spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, rmSync } from "node:fs";
import { whenAskedToEnd } from "../src/local/asked-to-end.mjs";
import { installWhatIsMissing, ROOT, rightNode, stop, toolEnvironment } from "../src/local/install.mjs";
import { findBrowser } from "./find-browser.mjs";

const CHECKS = ["build", "check:bindings", "check:types", "check:style", "check:promises", "check:arrows"];
const RESULTS = `${ROOT}node_modules/.cache/test-results.json`;

await installWhatIsMissing();
const node = rightNode();
const browser =
  findBrowser() ??
  stop(
    process.env.CHROME_BIN
      ? `CHROME_BIN names no program: ${process.env.CHROME_BIN}`
      : "The tests need a Chromium, Chrome or Edge: install one, or name it with CHROME_BIN=/path/to/it.",
  );
const env = { ...toolEnvironment(node), CHROME_BIN: browser };
console.log(`Node: ${node}\nBrowser: ${browser}`);

const checks = CHECKS.map(check);
const tests = await runTests(process.argv.slice(2));
const passed = checks.filter(Boolean).length + tests.passed;
const failed = checks.filter((ok) => !ok).length + tests.failed;
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);

function check(name) {
  const { scripts } = JSON.parse(readFileSync(`${ROOT}package.json`, "utf8"));
  const run = spawnSync(scripts[name], { cwd: ROOT, env, shell: true, encoding: "utf8" });
  const ok = run.status === 0;
  console.log(ok ? `passed: ${name}` : `FAILED: ${name}\n${run.stdout}${run.stderr}`);
  return ok;
}

/** A test that is skipped or still to do has failed, and so has a run that ends badly though no test did. */
async function runTests(args) {
  rmSync(RESULTS, { force: true });
  mkdirSync(`${ROOT}node_modules/.cache`, { recursive: true });
  const vitest = `${ROOT}node_modules/vitest/vitest.mjs`;
  const config = ["--config", "tests/checks/vitest.config.ts"];
  const reporters = ["--reporter=default", "--reporter=json", `--outputFile.json=${RESULTS}`];
  const all = [vitest, "run", ...config, ...reporters, ...args];
  const child = spawn(node, all, { cwd: ROOT, env, stdio: "inherit" });
  whenAskedToEnd((signal) => child.kill(signal));
  const code = await new Promise((settle) => child.once("error", settle).once("exit", settle));
  const { passed, failed } = countTests();
  const endedBadly = code !== 0 && failed === 0;
  return { passed, failed: failed + (endedBadly || passed + failed === 0 ? 1 : 0) };
}

function countTests() {
  let results;
  try {
    results = JSON.parse(readFileSync(RESULTS, "utf8"));
  } catch {
    return { passed: 0, failed: 0 };
  }
  const files = results.testResults;
  const tests = files.flatMap((file) => file.assertionResults);
  const passed = tests.filter((test) => test.status === "passed").length;
  const brokenFiles = files.filter((file) => file.status === "failed" && !file.assertionResults.some(isFailed));
  return { passed, failed: tests.length - passed + brokenFiles.length };
}

function isFailed(test) {
  return test.status === "failed";
}
