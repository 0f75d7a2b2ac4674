/** Where the engine's image is kept: beside the app's files, keyed by version and browser. The device makes it
 * for itself after its first start; it costs no download. */

import { bareEngine, bytesOf, importCore, writeFiles } from "./fresh";
import { takeImage } from "./image";
import type { Image } from "./image";
import type { Parts } from "./protocol";

const STORE = "ringwright-engine";
const TABLE = "images";

/** Version of everything that makes the image what it is, and the browser. */
export function imageKey(parts: Parts): string {
  // Addresses carry a hash of their content; what stands within the page ends with its checksum.
  const mark = (text: string): string => (parts.kind === "within" ? `${text.length} ${text.slice(-24)}` : text);
  const worker = parts.kind === "within" ? "" : self.location.href;
  return [worker, mark(parts.wasm), mark(parts.first), mark(parts.rest), self.navigator.userAgent].join("\n");
}

/** The image of this version; undefined where there is none. */
export async function storedImage(parts: Parts): Promise<Image | undefined> {
  try {
    const database = await open();
    try {
      return await new Promise((resolve, reject) => {
        const asked = database.transaction(TABLE).objectStore(TABLE).get(imageKey(parts)) as IDBRequest<Image | undefined>;
        asked.onsuccess = () => resolve(asked.result);
        asked.onerror = () => reject(asked.error ?? new Error("the image cannot be read"));
      });
    } finally {
      database.close();
    }
  } catch {
    return undefined;
  }
}

/** Makes the image and keeps it. Only one is kept: that of this version. */
export async function makeImage(parts: Parts): Promise<void> {
  if (await storedImage(parts)) return;
  const engine = await bareEngine(parts);
  for (const which of ["first", "rest"] as const) writeFiles(engine, await bytesOf(parts, which));
  importCore(engine);
  const image = takeImage(engine);
  await change((table) => {
    table.clear();
    table.put(image, imageKey(parts));
  });
}

export function forgetImages(): Promise<void> {
  return change((table) => table.clear());
}

function open(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const asked = indexedDB.open(STORE, 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore(TABLE);
    asked.onsuccess = () => resolve(asked.result);
    asked.onerror = () => reject(asked.error ?? new Error("the store of images cannot be opened"));
  });
}

async function change(make: (table: IDBObjectStore) => void): Promise<void> {
  const database = await open();
  try {
    await new Promise<void>((resolve, reject) => {
      const transaction = database.transaction(TABLE, "readwrite");
      transaction.oncomplete = () => resolve();
      transaction.onerror = transaction.onabort = () => reject(transaction.error ?? new Error("the image cannot be kept"));
      make(transaction.objectStore(TABLE));
    });
  } finally {
    database.close();
  }
}
