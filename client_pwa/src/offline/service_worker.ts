/** The service worker: everything the app is made of, kept on the device when it is first seen.
 *
 * The list of files comes from the build (Workbox writes it in); keeping and answering is done here, in
 * a tenth of the bytes that the library's own run-time part would add to the first visit. Its address never
 * changes. A newer one fills up beside the old and waits until the person asks for it. */

interface Entry {
  url: string;
  /** Of a file without a hash in its name; null where the name itself changes with the content. */
  revision: string | null;
}

export {};

declare const self: ServiceWorkerGlobalScope & { __WB_MANIFEST: Entry[] };

const KEPT = "ringwright-files";
const PAGE = "index.html";
/** The service's own addresses, which the page must not answer for. */
const NOT_THE_APP = /\/(v1|openapi|healthz|readyz|docs)\b/;

const keys = new Map<string, string>();
for (const { url, revision } of self.__WB_MANIFEST) {
  const address = new URL(url, self.location.href).href;
  keys.set(address, revision === null ? address : `${address}?revision=${revision}`);
}

async function fill(): Promise<void> {
  const cache = await caches.open(KEPT);
  await Promise.all(
    [...keys].map(async ([address, key]) => {
      if (await cache.match(key)) return;
      // Past the browser's own cache where the name does not change with the content.
      const reply = await fetch(address, { cache: key === address ? "default" : "reload" });
      if (!reply.ok) throw new Error(`${address}: ${reply.status}`);
      await cache.put(key, reply);
    }),
  );
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
