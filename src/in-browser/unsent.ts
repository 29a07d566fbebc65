import { OFFLINE } from "#shared/messages/owner-words.ts";
import { say } from "#src/in-browser/say.ts";

/** An answer on its way to the shop: the question and its form's fields. */
export type Unsent = { readonly question: string; readonly fields: readonly (readonly [string, string])[] };

const KEY = "unsent";
const AGAIN_MS = 8000;

let sending: Promise<boolean> | null = null;
let waiting = 0;
let away = false;

export const unsent = (): readonly Unsent[] => JSON.parse(localStorage.getItem(KEY) ?? "[]") as Unsent[];
const store = (answers: readonly Unsent[]): void => localStorage.setItem(KEY, JSON.stringify(answers));

export function forgetUnsent(): void {
  localStorage.removeItem(KEY);
}

/** Answers go out one after the other, in order, and are kept until the shop has them. */
export function send(answer: Unsent): void {
  store([...unsent(), answer]);
  void sendAll();
}

/** @returns whether everything is with the shop now */
export function sendAll(): Promise<boolean> {
  clearTimeout(waiting);
  sending ??= oneTabAtATime(sendInOrder).finally(() => {
    sending = null;
  });
  return sending;
}

/** Two tabs that send at once could begin two conversations. Browsers lend locks to secure pages only. */
const oneTabAtATime = (send: () => Promise<boolean>): Promise<boolean> =>
  "locks" in navigator ? navigator.locks.request(KEY, send) : send();

async function sendInOrder(): Promise<boolean> {
  for (let [answer] = unsent(); answer !== undefined; [answer] = unsent()) {
    const answered = await post(answer);
    if (answered === "away") {
      say(OFFLINE.kept);
      away = true;
      waiting = setTimeout(() => void sendAll(), AGAIN_MS);
      return false;
    }
    store(unsent().slice(1));
    if (answered === "refused") location.assign(`/intake/${answer.question}`);
  }
  if (away) say(OFFLINE.sent);
  away = false;
  return true;
}

async function post({ question, fields }: Unsent): Promise<"kept" | "refused" | "away"> {
  try {
    const response = await fetch(`/intake/${question}`, {
      method: "POST",
      headers: { accept: "application/json" },
      body: new URLSearchParams(fields.map(([name, value]) => [name, value])),
    });
    if (response.status === 422 || response.status === 404) return "refused";
    if (!response.ok) return "away";
    offerResume(((await response.json()) as { resume: string }).resume);
    return "kept";
  } catch {
    return "away";
  }
}

/** The first answer begins a conversation, and from then on it can be gone on with elsewhere. */
function offerResume(link: string): void {
  const offer = document.querySelector("[data-resume]");
  offer?.removeAttribute("hidden");
  offer?.querySelector("input")?.setAttribute("value", link);
}

addEventListener("online", () => void sendAll());
