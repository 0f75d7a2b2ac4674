/** Photographs of a job, on this device alone, in a store of their own: they go into no link, code or file. */

import { openDB } from "idb";
import type { DBSchema, IDBPDatabase } from "idb";

export interface Photo {
  id: string;
  job: string;
  /** When it was taken in, in milliseconds since 1970. */
  taken: number;
  picture: Blob;
}

interface Store extends DBSchema {
  photos: { key: string; value: Photo; indexes: { job: string } };
}

/** A job has no more: a phone's room is for the book. */
export const MOST_PHOTOS = 6;
/** Longest side, in dots: a dial gauge can be read on it. */
export const LONGEST_SIDE = 1600;
const QUALITY = 0.82;

let opened: Promise<IDBPDatabase<Store>> | undefined;

function store(): Promise<IDBPDatabase<Store>> {
  opened ??= openDB<Store>("ringwright-photos", 1, {
    upgrade(database) {
      database.createObjectStore("photos", { keyPath: "id" }).createIndex("job", "job");
    },
    blocking(_current, _wanted, event) {
      (event.target as IDBDatabase).close();
      opened = undefined;
    },
    terminated() {
      opened = undefined;
    },
  }).catch((error: unknown) => {
    opened = undefined;
    throw error;
  });
  return opened;
}

/** Those of a job, the oldest first. */
export async function photosOf(job: string): Promise<Photo[]> {
  const found = await (await store()).getAllFromIndex("photos", "job", job);
  return found.sort((one, other) => one.taken - other.taken);
}

/** Keeps one; false where this device has no room for it. */
export async function keepPhoto(photo: Photo): Promise<boolean> {
  try {
    await (await store()).put("photos", photo);
    return true;
  } catch {
    return false;
  }
}

export async function dropPhoto(id: string): Promise<void> {
  await (await store()).delete("photos", id);
}

/** Drops those of every job that is not among `jobs`. */
export async function dropPhotosBut(jobs: ReadonlySet<string>): Promise<void> {
  const transaction = (await store()).transaction("photos", "readwrite");
  for (const photo of await transaction.store.getAll()) if (!jobs.has(photo.job)) await transaction.store.delete(photo.id);
  await transaction.done;
}

/** Width and height within LONGEST_SIDE, in the same proportion. */
export function shrunk(width: number, height: number): { width: number; height: number } {
  const share = Math.min(1, LONGEST_SIDE / Math.max(width, height));
  return { width: Math.max(1, Math.round(width * share)), height: Math.max(1, Math.round(height * share)) };
}

/** A picture as it is kept: small enough for a phone, and without what the camera writes beside it (place, day).
 * Rejects what is no picture. */
export async function asKept(file: Blob): Promise<Blob> {
  const picture = await createImageBitmap(file);
  const canvas = document.createElement("canvas");
  Object.assign(canvas, shrunk(picture.width, picture.height));
  canvas.getContext("2d")!.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  return new Promise((resolve, reject) => canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error("no picture"))), "image/jpeg", QUALITY));
}
