/** What a decision answers: the value, or why not. Expected refusals are values; a throw is a bug. */
export type Outcome<Value, Refusal> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly refusal: Refusal };

export const accept = <Value>(value: Value): { readonly ok: true; readonly value: Value } => ({ ok: true, value });

export const refuse = <Refusal>(refusal: Refusal): { readonly ok: false; readonly refusal: Refusal } => ({
  ok: false,
  refusal,
});
