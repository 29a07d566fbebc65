import { WAITING } from "#shared/messages/owner-words.ts";
import { element } from "#src/in-browser/element.ts";
import { entitle, swap } from "#src/in-browser/page-swap.ts";
import { sendAll } from "#src/in-browser/unsent.ts";

const AGAIN_MS = 4000;
let again = 0;
let address = "/verdict";

/** All is said: says so in place of the question, until the shop has every answer and can give its verdict. */
export function awaitVerdict(dropped: readonly string[]): void {
  const place = document.getElementById("question");
  if (place === null) return;
  const title = element("h1", WAITING.title);
  title.tabIndex = -1;
  title.id = "waiting";
  place.replaceChildren(title, element("p", WAITING.says));
  entitle(place);
  // The verdict's page says which answers went, since this one is replaced by it.
  address = dropped.length > 0 ? `/verdict?dropped=${dropped.join(".")}` : "/verdict";
  void goToVerdict();
}

/** False again as soon as the owner has gone back to a question. */
const isWaiting = (): boolean => document.getElementById("waiting") !== null;

async function goToVerdict(): Promise<void> {
  clearTimeout(again);
  if (!isWaiting() || ((await sendAll()) && isWaiting() && (await swap(address)))) return;
  again = setTimeout(() => void goToVerdict(), AGAIN_MS);
}

addEventListener("online", () => void goToVerdict());
