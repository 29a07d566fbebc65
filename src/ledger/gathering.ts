/**
 * Lets calls that come at the same moment go on together. Each is then decided in a transaction of its own, one after
 * the other, and the disk is awaited once for them all, not once for each.
 * @param moment what the first to come waits for, and with it all who come meanwhile
 */
export function gathering(moment: () => Promise<void>): () => Promise<void> {
  let gathered: Promise<void> | null = null;
  return () => {
    gathered ??= moment().finally(() => {
      gathered = null;
    });
    return gathered;
  };
}
