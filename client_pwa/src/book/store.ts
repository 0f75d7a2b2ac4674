/** The job book on this device (IndexedDB). Each job has a revision: a save that is not based on the
 * newest one is refused, so that two tabs never overwrite one another unseen. */

import { openDB } from "idb";
import type { DBSchema, IDBPDatabase } from "idb";
import { JOB_VERSION, readJob } from "./job";
import type { Job, JobReading } from "./job";

/** As it lies in the store; read back as a stranger's. */
interface Kept {
  id: string;
  revision: number;
  version: number;
  /** When it was thrown away, else 0. */
  deleted: number;
  job: unknown;
}

interface Book extends DBSchema {
  jobs: { key: string; value: Kept };
}

export interface BookEntry {
  id: string;
  revision: number;
  deleted: number;
  reading: JobReading;
}

export type SaveResult =
  | { state: "saved"; revision: number }
  | { state: "conflict"; revision: number }
  | { state: "full" }
  | { state: "failed"; message: string };

const DATABASE = "ringwright-book";
const DATABASE_VERSION = 1;

let opened: Promise<IDBPDatabase<Book>> | undefined;
let onLost: () => void = () => undefined;

/** Called when the open book is taken away (site data cleared while the page is open). */
export function whenLost(listener: () => void): void {
  onLost = listener;
}

function book(): Promise<IDBPDatabase<Book>> {
  opened ??= openDB<Book>(DATABASE, DATABASE_VERSION, {
    upgrade(database) {
      database.createObjectStore("jobs", { keyPath: "id" });
    },
    // A newer page wants to change the book: let go, the next save opens it again. No version at all means
    // that it is being deleted.
    blocking(_current, wanted, event) {
      (event.target as IDBDatabase).close();
      opened = undefined;
      if (wanted === null) onLost();
    },
    terminated() {
      opened = undefined;
      onLost();
    },
  }).catch((error: unknown) => {
    opened = undefined;
    throw error;
  });
  return opened;
}

export async function allEntries(): Promise<BookEntry[]> {
  const kept = await (await book()).getAll("jobs");
  return kept.map(entryOf).sort((one, other) => changedOf(other) - changedOf(one));
}

export async function entryWith(id: string): Promise<BookEntry | undefined> {
  const kept = await (await book()).get("jobs", id);
  return kept ? entryOf(kept) : undefined;
}

/** Saves `job` if the book still holds `basedOn` (0 for a job that is not in it yet). */
export async function save(job: Job, basedOn: number): Promise<SaveResult> {
  let transaction;
  try {
    transaction = (await book()).transaction("jobs", "readwrite");
    const held = await transaction.store.get(job.id);
    const revision = held?.revision ?? 0;
    if (held && revision !== basedOn) {
      await transaction.done;
      return { state: "conflict", revision };
    }
    const next = Math.max(revision, basedOn) + 1;
    const kept: Kept = { id: job.id, revision: next, version: JOB_VERSION, deleted: 0, job };
    await Promise.all([transaction.store.put(kept), transaction.done]);
    return { state: "saved", revision: next };
  } catch (error) {
    // A full disk may show only as the reason for which the transaction was given up.
    return failure(transaction?.error ?? error);
  }
}

/** Marks an entry thrown away (or not). What it holds stays, damaged or sound. */
export async function setDeleted(id: string, deleted: number): Promise<SaveResult> {
  try {
    const transaction = (await book()).transaction("jobs", "readwrite");
    const held = await transaction.store.get(id);
    if (held) await transaction.store.put({ ...held, deleted });
    await transaction.done;
    return { state: "saved", revision: held?.revision ?? 0 };
  } catch (error) {
    return failure(error);
  }
}

/** Takes for good what was thrown away. */
export async function emptyDeleted(): Promise<void> {
  const transaction = (await book()).transaction("jobs", "readwrite");
  for (const kept of await transaction.store.getAll()) {
    if (kept.deleted > 0) await transaction.store.delete(kept.id);
  }
  await transaction.done;
}

function entryOf(kept: Kept): BookEntry {
  return {
    id: String(kept.id),
    revision: typeof kept.revision === "number" ? kept.revision : 0,
    deleted: typeof kept.deleted === "number" ? kept.deleted : 0,
    reading: readJob(kept.job, kept.version),
  };
}

function changedOf(entry: BookEntry): number {
  return entry.reading.ok ? entry.reading.job.changed : 0;
}

function failure(error: unknown): SaveResult {
  const cause = error as { name?: string; message?: string };
  if (cause.name === "QuotaExceededError") return { state: "full" };
  return { state: "failed", message: cause.message ?? String(error) };
}
