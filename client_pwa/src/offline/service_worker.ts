/** The service worker: everything the app is made of, kept on the device when it is first seen.
 *
 * The list of files comes from the build (Workbox writes it in); keeping and answering is done here, in
 * a tenth of the bytes that the library's own run-time part would add to the first visit. Its address never
 * changes. A newer one fills up beside the old and waits until the person asks for it. The files of the version
 * that last came to figures stay until a newer one has come to figures too: one that does not start on this
 * device is given up for it. */

import type { FilesReply, ToServiceWorker } from "./messages";

interface Entry {
  url: string;
  /** Of a file without a hash in its name: the first half of its SHA-256. Null where the name itself changes with the content. */
  revision: string | null;
}

declare const self: ServiceWorkerGlobalScope & { __WB_MANIFEST: Entry[] };

const KEPT = "ringwright-files";
const PAGE = "index.html";
/** Starts that a new version has to come to figures, before the one that did is given again. */
const TRIES = 2;
/** The service's own addresses, and the app as one file, which the page must not answer for. */
const NOT_THE_APP = /\/(v1|openapi|healthz|readyz|metrics|docs|ringwright\.html)\b/;

const keys = new Map<string, string>();
for (const { url, revision } of self.__WB_MANIFEST) {
  const address = new URL(url, self.location.href).href;
  keys.set(address, revision === null ? address : `${address}?revision=${revision}`);
}

const page = new URL(PAGE, self.location.href).href;
/** Of this version: its page, which names every other file. */
const version = keys.get(page)!;

/** What is known of starts, kept beside the files. */
interface Starts {
  /** The files, address to key, of the version that last came to figures. */
  good: Record<string, string>;
  /** The version that `tries` counts for. */
  version: string;
  /** Starts of this version that nothing was heard of yet. */
  tries: number;
}

const STARTS = new URL("starts.json", self.location.href).href;

async function readStarts(): Promise<Starts> {
  const held = await (await caches.open(KEPT)).match(STARTS);
  const read = (await held?.json().catch(() => undefined)) as Starts | undefined;
  return read?.version === version ? read : { good: read?.good ?? {}, version, tries: 0 };
}

async function writeStarts(starts: Starts): Promise<void> {
  await (await caches.open(KEPT)).put(STARTS, new Response(JSON.stringify(starts)));
}

const cameToFigures = (starts: Starts): boolean => starts.good[page] === version;
/** Whether the version before is given in place of this one. */
const isGivenUp = (starts: Starts): boolean => starts.good[page] !== undefined && !cameToFigures(starts) && starts.tries >= TRIES;

/** The page for a start: this version's, or that of the one before when this did not start here. */
async function startingPage(): Promise<string> {
  const starts = await readStarts();
  const before = starts.good[page];
  if (before === undefined || cameToFigures(starts)) return version;
  if (isGivenUp(starts)) return before;
  await writeStarts({ ...starts, tries: starts.tries + 1 });
  return version;
}

/** A page of the version before says so of itself, and proves nothing of this one. */
async function noteStart(script: string): Promise<void> {
  if (!keys.has(script)) return;
  const starts = await readStarts();
  if (!cameToFigures(starts)) await writeStarts({ good: Object.fromEntries(keys), version, tries: 0 });
}

/** A server in the middle of an update, or already past it, has another page under the same name: kept beside
 * this version's files it would be an app that does not open. */
async function isOfVersion(key: string, reply: Response): Promise<boolean> {
  const revision = new URL(key).searchParams.get("revision");
  if (revision === null) return true;
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", await reply.clone().arrayBuffer()));
  return [...digest.subarray(0, 16)].map((byte) => byte.toString(16).padStart(2, "0")).join("") === revision;
}

async function keep(cache: Cache, address: string, key: string): Promise<void> {
  if (await cache.match(key)) return;
  // Past the browser's own cache where the name does not change with the content.
  const reply = await fetch(address, { cache: key === address ? "default" : "reload" });
  if (!reply.ok) throw new Error(`${address}: ${reply.status}`);
  if (!(await isOfVersion(key, reply))) throw new Error(`${address}: of another version`);
  await cache.put(key, reply);
}

async function fill(): Promise<void> {
  const cache = await caches.open(KEPT);
  await Promise.all([...keys].map(([address, key]) => keep(cache, address, key)));
}

/** Browsers may drop single files: what is gone is put back. How many are missing after that, of the files that
 * the next start needs as well. */
async function putBack(starts: Starts): Promise<number> {
  const cache = await caches.open(KEPT);
  const wanted = [...keys, ...(isGivenUp(starts) ? Object.entries(starts.good) : [])];
  const done = await Promise.allSettled(wanted.map(([address, key]) => keep(cache, address, key)));
  return done.filter((each) => each.status === "rejected").length;
}

/** At the next update: until then a page of the version before may still be open, and ask for its own files. */
async function dropOld(): Promise<void> {
  const cache = await caches.open(KEPT);
  const wanted = new Set([...keys.values(), ...Object.values((await readStarts()).good), STARTS]);
  const held = await cache.keys();
  await Promise.all(held.filter((request) => !wanted.has(request.url)).map((request) => cache.delete(request)));
}

async function answer(address: string, request: Request): Promise<Response> {
  const cache = await caches.open(KEPT);
  const key = address === page ? await startingPage() : (keys.get(address) ?? address);
  return (await cache.match(key)) ?? fetch(request);
}

self.addEventListener("install", (event) => event.waitUntil(fill()));

// The first version serves the page that brought it, so that "ready" is true from then on.
self.addEventListener("activate", (event) => event.waitUntil(dropOld().then(() => self.clients.claim())));

self.addEventListener("message", (event) => {
  const message = event.data as ToServiceWorker;
  if (message.kind === "use-new-version") void self.skipWaiting();
  if (message.kind === "started") event.waitUntil(noteStart(message.script));
  if (message.kind === "look-for-files" || message.kind === "try-newest") {
    const answered = readStarts().then(async (starts) => {
      if (message.kind === "try-newest") await writeStarts((starts = { ...starts, tries: 0 }));
      event.ports[0]?.postMessage({ missing: await putBack(starts), before: isGivenUp(starts) } satisfies FilesReply);
    });
    event.waitUntil(answered);
  }
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== "GET" || url.origin !== self.location.origin || NOT_THE_APP.test(url.pathname)) return;
  const plain = url.origin + url.pathname;
  event.respondWith(answer(request.mode === "navigate" && !keys.has(plain) ? page : plain, request));
});
