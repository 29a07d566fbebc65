// Preloaded by NODE_OPTIONS=--import: writes down every host beyond this machine that a Node process wants to connect to.
import { appendFileSync } from "node:fs";
import { Socket } from "node:net";

const HERE = /^(localhost|127\.\d+\.\d+\.\d+|::1)$/;
const { connect } = Socket.prototype;

Socket.prototype.connect = function (...args) {
  const host = hostOf(args);
  if (!HERE.test(host)) appendFileSync(process.env.NOTE_CALLS_IN, `${host}\n`);
  return connect.apply(this, args);
};

/** (options), (port, host), (path), or either of them already put into one array by `net.connect`. */
function hostOf(args) {
  const [first, second] = Array.isArray(args[0]) ? args[0] : args;
  if (typeof first === "object") return first.path ? "localhost" : (first.host ?? "localhost");
  return typeof second === "string" ? second : "localhost";
}
