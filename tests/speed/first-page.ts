import { gzipSync } from "node:zlib";
import { atMostKilobytes, type Measured } from "#tests/speed/measured.ts";
import { startShop } from "#tests/support/running-shop.ts";

/** What a page makes a browser fetch: style sheets, scripts, pictures, icons. Drawings within the page are in its HTML. */
const FETCHED = /<(?:link|script|img|source)\b[^>]*?\b(?:href|src)="([^"]+)"/g;
const FETCHED_LATER = /<link\b[^>]*?\brel="(?:canonical|alternate|author|license)"/;

/** The page on which an owner begins, with all that it fetches, as a real server sends it and as gzip -9 packs it. */
export async function measureFirstPage(): Promise<readonly Measured[]> {
  const shop = await startShop();
  try {
    const page = await textAt(`${shop.origin}/`);
    const paths = [...page.matchAll(FETCHED)]
      .filter(([tag]) => !FETCHED_LATER.test(tag))
      .map(([, path = ""]) => path)
      .filter((path) => !path.startsWith("data:"));
    const parts = await Promise.all(
      [...new Set(paths)].map(async (path) => ({ path, packed: packed(await textAt(`${shop.origin}${path}`)) })),
    );
    const sum = (some: readonly { readonly packed: number }[]) => some.reduce((total, part) => total + part.packed, 0);
    const scripts = parts.filter(({ path }) => path.endsWith(".js"));
    if (scripts.length === 0) throw new Error("The first page fetches no script: it cannot be the right one.");
    return [
      atMostKilobytes("first page all told, gzip -9", packed(page) + sum(parts), 14),
      atMostKilobytes("first page, scripts alone, gzip -9", sum(scripts), 8),
    ];
  } finally {
    await shop.stop();
  }
}

async function textAt(url: string): Promise<string> {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`${url} answered ${response.status}`);
  return response.text();
}

const packed = (text: string): number => gzipSync(text, { level: 9 }).length;
