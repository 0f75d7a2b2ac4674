/** Ties the open sheet to the job book: what is opened at the start, when it is saved, and what is said
 * when it cannot be. */

import { computed, effect, signal } from "@preact/signals";
import { demoJob } from "../book/demo";
import { copyOf, newJob } from "../book/job";
import { nameByDay, nameByEngine } from "../book/names";
import type { Job, JobReading } from "../book/job";
import { unpackJob } from "../book/share";
import { jobBegins } from "../book/shop";
import { allEntries, entryWith, save, setDeleted, whenLost } from "../book/store";
import type { BookEntry } from "../book/store";
import { hearOthers, tellOthers } from "../book/tabs";
import { change, edits, job, openJob } from "./sheet";
import { place, readPlace, settle } from "../base/routes";
import { said } from "../base/said";

export type Keeping =
  | "kept"
  | "keeping"
  | "full"
  | "conflict"
  | "no-book";

export const keeping = signal<Keeping>("kept");
/** The browser emptied the book; said until the person has read it. */
export const cleared = signal(false);
export const entries = signal<BookEntry[]>([]);
export const damagedOpen = signal<(JobReading & { ok: false }) | undefined>(undefined);
/** The job came in a link and is not in the book. */
export const fromLink = signal(false);
export const started = signal(false);
/** The new job that was not asked its engine yet. */
export const unnamed = signal("");

export const liveEntries = computed(() => entries.value.filter((entry) => entry.deleted === 0));
export const deletedEntries = computed(() => entries.value.filter((entry) => entry.deleted > 0));

const LAST = "ringwright-last-job";
const COUNT = "ringwright-book-count";
const SAVE_AFTER_MS = 250;

let basedOn = 0;
let savedEdits = 0;
let timer: ReturnType<typeof setTimeout> | undefined;
let running: Promise<void> = Promise.resolve();

export async function start(): Promise<void> {
  const first = place.value;
  const [read] = await Promise.all([readBook(), first.packed === undefined ? undefined : openPacked(first.packed, first.screen)]);
  // A link that cannot be read leaves what was open before.
  if (first.packed === undefined || damagedOpen.value) {
    const screen = damagedOpen.value ? "book" : first.screen;
    const wantedEntry = [first.jobId, remembered(LAST)].map((id) => read.find((entry) => entry.id === id && entry.deleted === 0)).find(Boolean);
    const entry = wantedEntry ?? read.find((each) => each.deleted === 0);
    const link = damagedOpen.value;
    if (entry) openEntry(entry, screen);
    else await openFirst(read.length, screen);
    damagedOpen.value ??= link;
  }
  started.value = true;
  effect(saveWhenEdited);
  hearOthers((notice) => void othersSaved(notice.id, notice.revision));
  whenLost(bookLost);
  addEventListener("hashchange", () => void followAddress());
  addEventListener("pagehide", () => void saveNow());
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "hidden") void saveNow();
  });
}

async function readBook(): Promise<BookEntry[]> {
  try {
    entries.value = await allEntries();
  } catch {
    keeping.value = "no-book";
  }
  return entries.value;
}

export async function refreshBook(): Promise<void> {
  await readBook();
  remember(COUNT, String(liveEntries.value.length));
}

/** One job was saved: the other thousand need not be read again. */
async function refreshEntry(id: string): Promise<void> {
  const entry = await entryWith(id);
  if (!entry) return refreshBook();
  entries.value = [entry, ...entries.peek().filter((each) => each.id !== id)];
  remember(COUNT, String(liveEntries.value.length));
}

/** An empty book: a first visit, or everything was cleared away under us. */
async function openFirst(held: number, screen: string): Promise<void> {
  const before = Number(remembered(COUNT) ?? 0);
  const demo = demoJob();
  basedOn = 0;
  openJob(demo);
  settle(screen, demo.id);
  if (held === 0 && keeping.value !== "no-book") {
    const result = await save(demo, 0);
    if (result.state === "saved") basedOn = result.revision;
    await refreshBook();
    if (before > 1) cleared.value = true;
  }
}

async function openPacked(packed: string, screen: string): Promise<void> {
  const reading = await unpackJob(packed);
  if (!reading.ok) {
    damagedOpen.value = reading;
    if (started.peek()) settle("book", job.value.id);
    return;
  }
  // A link is a stranger's: its job gets a place of its own and never overwrites one of the book.
  openJob(copyOf(reading.job, reading.job.name));
  basedOn = 0;
  fromLink.value = true;
  settle(screen, job.value.id);
}

export function openEntry(entry: BookEntry, screen: string): void {
  damagedOpen.value = undefined;
  fromLink.value = false;
  if (!entry.reading.ok) {
    damagedOpen.value = entry.reading;
    settle("book", entry.id);
    return;
  }
  basedOn = entry.revision;
  savedEdits = 0;
  openJob(entry.reading.job);
  remember(LAST, entry.id);
  settle(screen, entry.id);
}

export async function openById(id: string, screen: string): Promise<void> {
  await saveNow();
  const entry = await entryWith(id);
  if (entry) openEntry(entry, screen);
}

/** A new sheet in the book. */
export async function addJob(next: Job, screen: string): Promise<void> {
  await saveNow();
  damagedOpen.value = undefined;
  fromLink.value = false;
  basedOn = 0;
  savedEdits = 0;
  openJob(next);
  remember(LAST, next.id);
  settle(screen, next.id);
  await saveNow(true);
}

/** A sheet with nothing on it; it is called by the day until somebody says for which engine it is. */
export async function startJob(): Promise<void> {
  const next = newJob(nameByDay(namesInBook()), jobBegins.peek());
  await addJob(next, "ring");
  unnamed.value = next.id;
}

export function nameForEngine(engine: string): void {
  const { id, created } = job.peek();
  rename(nameByEngine(engine, namesInBook(id), created));
}

function namesInBook(but = ""): string[] {
  return liveEntries.peek().flatMap((entry) => (entry.reading.ok && entry.id !== but ? [entry.reading.job.name] : []));
}

export async function keepLinked(): Promise<void> {
  fromLink.value = false;
  remember(LAST, job.value.id);
  await saveNow(true);
}

export async function throwAway(entry: BookEntry): Promise<void> {
  // Nought is not deleted, and a clock that was reset tells nought.
  await setDeleted(entry.id, Date.now() || 1);
  tellOthers({ id: entry.id, revision: entry.revision });
  await refreshBook();
  const name = entry.reading.ok ? entry.reading.job.name : entry.reading.name;
  said.value = {
    text: `"${name}" is deleted.`,
    action: {
      label: "Undo",
      run: () => {
        void setDeleted(entry.id, 0).then(refreshBook);
        said.value = { text: `"${name}" is back.` };
      },
    },
  };
}

/** After a conflict: the other tab's sheet, with this one kept beside it. */
export async function takeTheirs(): Promise<void> {
  const mine = copyOf(job.value, job.value.name + " (from this tab)");
  await save(mine, 0);
  keeping.value = "kept";
  const theirs = await entryWith(job.value.id);
  if (theirs) openEntry(theirs, place.value.screen);
  await refreshBook();
}

/** After a conflict: this sheet goes on under a new name, the other stays as it is. */
export async function keepMine(): Promise<void> {
  keeping.value = "kept";
  // What was changed here goes into the copy; under the old name it must not be tried again.
  savedEdits = edits.value;
  await addJob(copyOf(job.value, job.value.name + " (from this tab)"), place.value.screen);
}

export async function saveNow(always = false): Promise<void> {
  clearTimeout(timer);
  timer = undefined;
  // One save after another: each is based on the revision of the one before.
  running = running.then(() => saveOnce(always));
  await running;
}

/** Before the page is loaded anew: keeps what is on it. False where that cannot be, and loading would lose it. */
export async function keptAll(): Promise<boolean> {
  await saveNow();
  return fromLink.value || keeping.value === "kept";
}

/** Does what loads the page anew, if nothing is lost by it; else the notices say what is not kept. */
export async function onceKept(act: () => unknown): Promise<void> {
  if (await keptAll()) act();
}

async function saveOnce(always: boolean): Promise<void> {
  if (fromLink.value || keeping.value === "conflict") return;
  if (!always && edits.value === savedEdits) return;
  const sheet = job.value;
  const made = edits.value;
  const result = await save(sheet, basedOn);
  if (sheet.id !== job.value.id) return;
  if (result.state === "saved") {
    basedOn = result.revision;
    savedEdits = made;
    keeping.value = edits.value === made ? "kept" : "keeping";
    tellOthers({ id: sheet.id, revision: result.revision });
    await refreshEntry(sheet.id);
    if (made > 0) void navigator.storage?.persist?.();
  } else if (result.state === "conflict") keeping.value = "conflict";
  else if (result.state === "full") keeping.value = "full";
  else keeping.value = "no-book";
}

function saveWhenEdited(): void {
  const made = edits.value;
  if (made === 0 || made === savedEdits) return;
  if (fromLink.peek()) {
    // The first change makes it one's own.
    fromLink.value = false;
    remember(LAST, job.peek().id);
  }
  if (keeping.peek() === "kept") keeping.value = "keeping";
  clearTimeout(timer);
  timer = setTimeout(() => void saveNow(), SAVE_AFTER_MS);
}

async function othersSaved(id: string, revision: number): Promise<void> {
  await refreshBook();
  if (id !== job.value.id || revision <= basedOn) return;
  if (edits.value === savedEdits) {
    const entry = await entryWith(id);
    if (entry) openEntry(entry, place.value.screen);
    said.value = { text: "This job was changed in another tab; this page now shows the newest." };
  } else keeping.value = "conflict";
}

function bookLost(): void {
  cleared.value = true;
  basedOn = 0;
  void saveNow(true);
}

async function followAddress(): Promise<void> {
  const next = readPlace(location.hash);
  if (next.packed !== undefined) {
    await saveNow();
    await openPacked(next.packed, next.screen);
  } else if (next.jobId !== undefined && next.jobId !== job.value.id) {
    await openById(next.jobId, next.screen);
  }
}

export function rename(name: string): void {
  change({ name });
}

function remember(key: string, value: string): void {
  try {
    localStorage.setItem(key, value);
  } catch {
    // Forgetting which job was last open costs one tap.
  }
}

function remembered(key: string): string | undefined {
  try {
    return localStorage.getItem(key) ?? undefined;
  } catch {
    return undefined;
  }
}
