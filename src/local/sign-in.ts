import { keysOf } from "#src/local/keys.ts";
import { originNow } from "#src/local/running.ts";
import { byName, signInLink } from "#src/local/sign-in-link.ts";
import { openStateFolder } from "#src/local/state-folder.ts";

/** For a shop on the edge both are given; for one on this machine they are found beside its state. */
const { LINK_KEY, PUBLIC_ORIGIN } = process.env;
const { origin, key } = LINK_KEY && PUBLIC_ORIGIN ? { origin: PUBLIC_ORIGIN, key: LINK_KEY } : ofThisMachine();
console.log(`Shop sign-in, once, within 10 minutes: ${await signInLink(byName(origin), key)}`);

function ofThisMachine(): { readonly origin: string; readonly key: string } {
  const folder = openStateFolder();
  const origin = originNow(folder);
  if (origin === null) {
    console.error(`No shop runs on the state in ${folder}. Start it with: npm start`);
    process.exit(1);
  }
  return { origin, key: keysOf(folder).LINK_KEY };
}
