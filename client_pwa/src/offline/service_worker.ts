/** The service worker: everything the app is made of, kept on the device when it is first seen.
 *
 * Its address never changes. A newer one waits until the person asks for it. */

import { cleanupOutdatedCaches, createHandlerBoundToURL, precacheAndRoute } from "workbox-precaching";
import { NavigationRoute, registerRoute } from "workbox-routing";
import type { PrecacheEntry } from "workbox-precaching";

declare const self: ServiceWorkerGlobalScope & { __WB_MANIFEST: (PrecacheEntry | string)[] };

precacheAndRoute(self.__WB_MANIFEST);
cleanupOutdatedCaches();

// The page itself answers every address of the app; the service's own addresses are left alone.
registerRoute(
  new NavigationRoute(createHandlerBoundToURL("index.html"), { denylist: [/\/v1\//, /\/openapi/, /\/healthz/, /\/readyz/, /\/docs/] }),
);

self.addEventListener("message", (event) => {
  if (event.data === "use-new-version") void self.skipWaiting();
});

self.addEventListener("activate", (event) => {
  // The first version serves the page that brought it, so that "ready" is true from then on.
  event.waitUntil(self.clients.claim());
});
