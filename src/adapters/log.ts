/** What a log line may say: a route's pattern or a task, never an address, an answer or a name. */
type LogLine = {
  readonly event: "failure";
  readonly at: string;
  readonly error: string;
  readonly stack: readonly string[];
};

/**
 * One line of JSON, as the platform's log indexes it.
 * @param at the route's pattern or the task; of a key such as `receipt:…` only what stands before its subject
 */
export function logFailure(error: unknown, at: string) {
  const { name, stack = "" } = error instanceof Error ? error : new Error("Thrown value");
  write({ event: "failure", at: at.replace(/^(board|receipt):.*$/, "$1"), error: name, stack: framesOf(stack) });
}

/** The frames without the message before them, which may quote what a person typed. */
const framesOf = (stack: string): readonly string[] =>
  stack
    .split("\n")
    .map((line) => line.trim())
    .filter((line) => line.startsWith("at "));

const write = (line: LogLine) => console.log(JSON.stringify(line));
