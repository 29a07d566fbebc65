import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { afterAll, expect, it } from "vitest";
import { canonicalJson } from "#shared/basics/canonical-json.ts";
import { CHAIN_START, type ChainEntry, nextEntry } from "#shared/job/record-chain.ts";
import { chainLine } from "#shared/job/record-export.ts";
import { CHAIN } from "#shared/messages/shop-record-words.ts";

const folder = mkdtempSync(`${tmpdir()}/records-`);
afterAll(() => rmSync(folder, { recursive: true }));

it("a line gives its hash in any shell, by the lines that the shop's page shows", () => {
  const bodies = [
    { note: `"},"hash":"${"a".repeat(64)}","step":9}` },
    { note: '"before":"x","body":{}' },
    { note: "50 % %s \\n \\ $HOME `id` 'quoted' \u0000\u0001 \n \t é 中 \ud83d\ude00", slip: 17.85 },
    { note: "  two  gaps  " },
  ];
  const entries: ChainEntry[] = [];
  for (const body of bodies) entries.push(nextEntry(entries.at(-1) ?? CHAIN_START, canonicalJson(body)));
  writeFileSync(`${folder}/records.jsonl`, entries.map((entry) => `${chainLine(entry)}\n`).join(""));
  for (const { step, hash } of entries) {
    const command = CHAIN.command.replace("sed -n 3p", `sed -n ${step}p`);
    const printed = execFileSync("sh", ["-c", command], { cwd: folder, encoding: "utf8" });
    expect(printed).toBe(`${hash}  -\n`);
  }
});

it("a line is JSON, and reads back as the entry", () => {
  const entry = nextEntry(CHAIN_START, canonicalJson({ slip: 17.85, note: "“quoted”" }));
  expect(JSON.parse(chainLine(entry))).toEqual({ ...entry, body: { slip: 17.85, note: "“quoted”" } });
});
