/** A photo that is on its way: the key names it to the shop, so that it is kept once however often it is sent. */
export type WaitingPhoto = {
  readonly key: string;
  /** The address that takes it. */
  readonly to: string;
  readonly of: string;
  readonly photo: Blob;
};

const NAME = "photos";

/** Keeps a photo on this device until it is sent. Rejects where this browser keeps nothing. */
export const keepWaiting = (photo: WaitingPhoto): Promise<unknown> => ask("readwrite", (store) => store.put(photo));

export const dropWaiting = (key: string): Promise<unknown> => ask("readwrite", (store) => store.delete(key));

/** What waits, of this page and of others; nothing where this browser keeps nothing. */
export const allWaiting = (): Promise<readonly WaitingPhoto[]> =>
  ask<WaitingPhoto[]>("readonly", (store) => store.getAll()).catch(() => []);

async function ask<Answer>(mode: IDBTransactionMode, what: (store: IDBObjectStore) => IDBRequest): Promise<Answer> {
  const database = await open();
  try {
    return await answerOf<Answer>(what(database.transaction(NAME, mode).objectStore(NAME)));
  } finally {
    database.close();
  }
}

function open(): Promise<IDBDatabase> {
  const request = indexedDB.open(NAME, 1);
  request.onupgradeneeded = () => request.result.createObjectStore(NAME, { keyPath: "key" });
  return answerOf(request);
}

const answerOf = <Answer>(request: IDBRequest): Promise<Answer> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result as Answer);
    request.onerror = () => reject(request.error ?? new Error("This browser keeps nothing"));
  });
