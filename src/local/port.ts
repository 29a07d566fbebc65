import { createServer } from "node:net";

/** Can a server listen on this port of the loopback address just now? */
export function isFree(port: number): Promise<boolean> {
  return new Promise((answer) => {
    const probe = createServer();
    probe.once("error", () => answer(false));
    probe.listen(port, "127.0.0.1", () => probe.close(() => answer(true)));
  });
}
