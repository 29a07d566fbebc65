/** Ends a `switch` over a union: a new case that is not handled becomes a compile error. */
export function unreachable(value: never): never {
  throw new Error(`Unhandled case: ${JSON.stringify(value)}`);
}
