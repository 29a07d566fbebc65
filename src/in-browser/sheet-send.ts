import type { SheetStepId, StoredEntry } from "#shared/job/sheet-entry.ts";
import { acknowledged, clashed, nextToSend, type Queued, refused } from "#shared/job/sheet-queue.ts";
import { mendField, UNSENT } from "#shared/messages/sheet-page-words.ts";
import { say } from "#src/in-browser/say.ts";
import { on, tell } from "#src/in-browser/sheet-news.ts";
import { atWork, jobNumber, sectionOf, setAtWork, setStamp } from "#src/in-browser/sheet-place.ts";
import { refreshSheet } from "#src/in-browser/sheet-refresh.ts";
import { isKeptName, jobsKept, keep, kept } from "#src/in-browser/sheet-store.ts";

const AGAIN_MS = 8000;
/** How long it is said that all went well. */
const SAID_MS = 6000;
let sending: Promise<void> | null = null;
let wanted = false;
let again = 0;
let wasAway = false;

/** Sends what is kept, now and whenever the network or another tab brings news. */
export function bringSending(): void {
  on("send", () => void sendKept());
  on("stale", () => void refreshSheet());
  addEventListener("online", () => void sendKept());
  addEventListener("storage", ({ key }) => {
    if (!isKeptName(key, jobNumber())) return;
    tell("kept");
    tell("stale");
  });
  void sendKept();
}

/** Entries go out one after the other, in order, by one tab at a time. */
function sendKept(): Promise<void> {
  clearTimeout(again);
  wanted = true;
  sending ??= sendWhileWanted().finally(() => {
    sending = null;
  });
  return sending;
}

/** What is written while others are on their way goes out after them. */
async function sendWhileWanted(): Promise<void> {
  while (wanted) {
    wanted = false;
    await oneTabAtATime(sendInOrder);
  }
}

/** Browsers lend locks to secure pages only; without one the key still keeps an entry from being written twice. */
const oneTabAtATime = (send: () => Promise<void>): Promise<void> =>
  "locks" in navigator ? navigator.locks.request("sheet", send) : send();

async function sendInOrder(): Promise<void> {
  let isStale = false;
  for (const number of jobsKept()) {
    for (let next = nextTo(number); next !== null; next = nextTo(number)) {
      const answer = await post(number, next);
      if (answer.was === "away") {
        stayAway(answer.says);
        return;
      }
      // Somebody else has signed in since the page came: what is theirs goes on, the rest waits for its writer.
      if (answer.was === "other-writer") {
        setAtWork(answer.signedIn);
        tell("kept");
        continue;
      }
      const before = kept(number);
      keep(number, before, after(before, next, answer));
      if (number === jobNumber() && answer.was === "stored") {
        isStale = true;
        noteOwn(next.step, answer.version);
      }
      tell("kept");
    }
  }
  if (isStale) await refreshSheet();
  if (wasAway) {
    say(jobsKept().length === 0 ? UNSENT.sent : "");
    setTimeout(() => {
      if (!wasAway) say("");
    }, SAID_MS);
  }
  wasAway = false;
}

const nextTo = (number: string): Queued | null => nextToSend(kept(number), atWork());

/** Whoever wrote it knows it, even where the page cannot be brought up to date. */
function noteOwn(step: SheetStepId, version: number): void {
  const section = sectionOf(step);
  if (section === null) return;
  setStamp(section, "after", String(version));
  section.dataset["sent"] = "";
}

function stayAway(says: string): void {
  say(says);
  wasAway = true;
  again = setTimeout(() => void sendKept(), AGAIN_MS);
}

type Answer =
  | { readonly was: "stored"; readonly version: number }
  | { readonly was: "clash"; readonly newer: StoredEntry }
  | { readonly was: "other-writer"; readonly signedIn: string }
  | { readonly was: "refused" | "away"; readonly says: string };

type Settled = Exclude<Answer, { was: "away" | "other-writer" }>;

function after(queue: readonly Queued[], { key }: Queued, answer: Settled): readonly Queued[] {
  if (answer.was === "stored") return acknowledged(queue, key, answer.version);
  return answer.was === "clash" ? clashed(queue, key, answer.newer) : refused(queue, key, answer.says);
}

type Told = {
  readonly stored?: StoredEntry;
  readonly newer?: StoredEntry;
  readonly signedIn?: string;
  readonly detail?: string;
  readonly errors?: readonly { readonly field: string; readonly accepted: string }[];
};

async function post(number: string, { step, after, key, by, fields }: Queued): Promise<Answer> {
  const body = new URLSearchParams(
    Object.entries({ ...fields, after: [String(after)], key: [key], by: [by] }).flatMap(([name, values]) =>
      values.map((value) => [name, value]),
    ),
  );
  try {
    const address = `/shop/jobs/${number}/sheet/${step}`;
    const response = await fetch(address, { method: "POST", headers: { accept: "application/json" }, body });
    if (response.status === 401 || response.status === 403) return { was: "away", says: UNSENT.signIn };
    if (response.status >= 500 || response.status === 429) return { was: "away", says: UNSENT.kept };
    const told = (await response.json()) as Told;
    if (told.stored !== undefined) return { was: "stored", version: told.stored.version };
    if (told.newer !== undefined) return { was: "clash", newer: told.newer };
    if (told.signedIn !== undefined) return { was: "other-writer", signedIn: told.signedIn };
    return { was: "refused", says: saysOf(told) };
  } catch {
    return { was: "away", says: UNSENT.kept };
  }
}

const saysOf = ({ errors = [], detail = "" }: Told): string =>
  errors.length === 0 ? detail : errors.map(({ field, accepted }) => `${mendField(field)}: ${accepted}.`).join(" ");
