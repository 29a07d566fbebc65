import type { CleanPhoto } from "#src/http/photo-bytes.ts";

/** Where photos' bytes lie: large, written once, read by those who may see the job. */
export type PhotoStore = {
  readonly put: (id: string, photo: CleanPhoto) => Promise<void>;
  readonly read: (id: string) => Promise<ReadableStream | null>;
  /** What is not there is dropped already. */
  readonly drop: (id: string) => Promise<void>;
};
