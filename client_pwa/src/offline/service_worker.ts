/** The service worker: everything the app is made of, kept on the device when it is first seen.
 *
 * The list of files comes from the build (Workbox writes it in); keeping and answering is done here, in
 * a tenth of the bytes that the library's own run-time part would add to the first visit. Its address never
 * changes. A newer one fills up beside the old and waits until the person asks for it. */

import type { FilesReply } from "./files_reply";

interface Entry {
  url: string;
  /** Of a file without a hash in its name: the first half of its SHA-256. Null where the name itself changes with the content. */
  revision: string | null;
}

declare const self: ServiceWorkerGlobalScope & { __WB_MANIFEST: Entry[] };

const KEPT = "ringwright-files";
const PAGE = "index.html";
/** The service's own addresses, which the page must not answer for. */
const NOT_THE_APP = /\/(v1|openapi|healthz|readyz|docs)\b/;

const keys = new Map<string, string>();
const revisions = new Map<string, string>();
for (const { url, revision } of self.__WB_MANIFEST) {
  const address = new URL(url, self.location.href).href;
  keys.set(address, revision === null ? address : `${address}?revision=${revision}`);
  if (revision !== null) revisions.set(address, revision);
}

/** A server in the middle of an update, or already past it, has another page under the same name: kept beside
 * this version's files it would be an app that does not open. */
async function isOfThisVersion(address: string, reply: Response): Promise<boolean> {
  const revision = revisions.get(address);
  if (revision === undefined) return true;
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", await reply.clone().arrayBuffer()));
  return [...digest.subarray(0, 16)].map((byte) => byte.toString(16).padStart(2, "0")).join("") === revision;
}

async function keep(cache: Cache, address: string, key: string): Promise<void> {
  if (await cache.match(key)) return;
  // Past the browser's own cache where the name does not change with the content.
  const reply = await fetch(address, { cache: key === address ? "default" : "reload" });
  if (!reply.ok) throw new Error(`${address}: ${reply.status}`);
  if (!(await isOfThisVersion(address, reply))) throw new Error(`${address}: of another version`);
  await cache.put(key, reply);
}

async function fill(): Promise<void> {
  const cache = await caches.open(KEPT);
  await Promise.all([...keys].map(([address, key]) => keep(cache, address, key)));
}

/** Browsers may drop single files: what is gone is put back. How many are missing after that. */
async function putBack(): Promise<number> {
  const cache = await caches.open(KEPT);
  const done = await Promise.allSettled([...keys].map(([address, key]) => keep(cache, address, key)));
  return done.filter((each) => each.status === "rejected").length;
}

async function dropOld(): Promise<void> {
  const cache = await caches.open(KEPT);
  const wanted = new Set(keys.values());
  const held = await cache.keys();
  await Promise.all(held.filter((request) => !wanted.has(request.url)).map((request) => cache.delete(request)));
}

async function answer(key: string, request: Request): Promise<Response> {
  const cache = await caches.open(KEPT);
  return (await cache.match(key)) ?? fetch(request);
}

self.addEventListener("install", (event) => event.waitUntil(fill()));

// The first version serves the page that brought it, so that "ready" is true from then on.
self.addEventListener("activate", (event) => event.waitUntil(dropOld().then(() => self.clients.claim())));

self.addEventListener("message", (event) => {
  if (event.data === "use-new-version") void self.skipWaiting();
  if (event.data === "look-for-files") {
    const answered = putBack().then((missing) => event.ports[0]?.postMessage({ missing } satisfies FilesReply));
    event.waitUntil(answered);
  }
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== "GET" || url.origin !== self.location.origin) return;
  const plain = url.origin + url.pathname;
  const page = request.mode === "navigate" && !keys.has(plain) && !NOT_THE_APP.test(url.pathname);
  const key = keys.get(page ? new URL(PAGE, self.location.href).href : plain);
  if (key !== undefined) event.respondWith(answer(key, request));
});
