// When this process is to end: a signal came, or npm, which would have passed it on, or the shell between is gone.
const SIGNALS = ["SIGINT", "SIGTERM", "SIGHUP"];
const LOOK_FOR_PARENT_MS = 500;

/** Calls `listener` with a signal's name each time; the answer undoes it. */
export function whenAskedToEnd(listener) {
  const parent = process.ppid;
  const isUnderNpm = process.env.npm_lifecycle_event !== undefined;
  const watch = setInterval(() => isUnderNpm && process.ppid !== parent && listener("SIGTERM"), LOOK_FOR_PARENT_MS);
  for (const signal of SIGNALS) process.on(signal, listener);
  return () => {
    clearInterval(watch);
    for (const signal of SIGNALS) process.off(signal, listener);
  };
}
