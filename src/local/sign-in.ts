import { keysOf } from "#src/local/keys.ts";
import { originNow } from "#src/local/running.ts";
import { signInLink } from "#src/local/sign-in-link.ts";
import { openStateFolder } from "#src/local/state-folder.ts";

const folder = openStateFolder();
const origin = originNow(folder);
if (origin === null) {
  console.error(`No shop runs on the state in ${folder}. Start it with: npm start`);
  process.exit(1);
}
console.log(`Shop sign-in, once, within 10 minutes: ${await signInLink(origin, keysOf(folder).LINK_KEY)}`);
