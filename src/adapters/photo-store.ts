import type { PhotoStore } from "#src/http/photo-store.ts";

/**
 * Photos in a bucket, each under its id alone: neither a job nor a person can be told from it.
 * @returns null where the worker has no bucket: photos are then switched off
 */
export function r2PhotoStore(bucket: R2Bucket | undefined): PhotoStore | null {
  if (bucket === undefined) return null;
  return {
    put: async (id, { type, bytes }) => {
      await bucket.put(keyOf(id), bytes, { httpMetadata: { contentType: type } });
    },
    read: async (id) => (await bucket.get(keyOf(id)))?.body ?? null,
    drop: (id) => bucket.delete(keyOf(id)),
  };
}

const keyOf = (id: string): string => `photos/${id}`;
