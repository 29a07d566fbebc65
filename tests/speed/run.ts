import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { measureConfirm } from "#tests/speed/confirm.ts";
import { measureDaySheet } from "#tests/speed/day-sheet.ts";
import { measureFirstPage } from "#tests/speed/first-page.ts";
import { measureGrowth } from "#tests/speed/growth.ts";
import { type Measured, tableOf } from "#tests/speed/measured.ts";
import { measureReading } from "#tests/speed/reading.ts";
import { measureSlotSearch } from "#tests/speed/slot-search.ts";
import { startSpeedRuntime } from "#tests/speed/speed-runtime.ts";
import { measureTriage } from "#tests/speed/triage.ts";
import { measureWorker } from "#tests/speed/worker-size.ts";

/*
 * `npm run speed`: ratios measured in one run on whatever machine this is, medians of several rounds in which the
 * contestants take turns. A goal that is not met is printed as such. Ends with 0 unless something broke.
 */

const folder = mkdtempSync(`${tmpdir()}/speed-`);
process.once("exit", () => rmSync(folder, { recursive: true, force: true }));
for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"]) process.once(signal, () => process.exit(1));

const lines: Measured[] = [];
lines.push(...(await told("triage", measureTriage)));
lines.push(...(await told("reading", measureReading)));
lines.push(...(await told("slot search", measureSlotSearch)));
const runtime = await startSpeedRuntime(folder);
lines.push(...(await told("confirm", () => measureConfirm(runtime))));
lines.push(...(await told("day sheet", () => measureDaySheet(runtime))));
lines.push(...(await told("growth, which stores a million bookings first", () => measureGrowth(runtime))));
await runtime.end();
lines.push(...(await told("first page", measureFirstPage)));
lines.push(...(await told("worker", async () => measureWorker())));
console.log(tableOf(lines));

function told<Result>(what: string, measure: () => Promise<Result>): Promise<Result> {
  console.error(`Measuring: ${what} …`);
  return measure();
}
