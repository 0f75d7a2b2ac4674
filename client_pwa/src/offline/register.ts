/** Registers the service worker, and says when the app is ready for use without a network and when a
 * newer version waits. Nothing is reloaded under somebody's hands. */

import { signal } from "@preact/signals";

export const readyOffline = signal(false);
export const newVersion = signal<ServiceWorker | undefined>(undefined);

export async function registerOffline(): Promise<void> {
  if (!("serviceWorker" in navigator) || import.meta.env.DEV) return;
  const container = navigator.serviceWorker;
  let asked = false;
  container.addEventListener("controllerchange", () => {
    if (asked) location.reload();
  });
  newVersion.subscribe((worker) => {
    if (worker) worker.addEventListener("statechange", () => (asked ||= worker.state === "activating"));
  });
  try {
    const registration = await container.register("service_worker.js", { updateViaCache: "none" });
    const look = (): void => {
      if (registration.active) readyOffline.value = true;
      if (registration.waiting && registration.active) newVersion.value = registration.waiting;
    };
    look();
    registration.addEventListener("updatefound", () => {
      registration.installing?.addEventListener("statechange", look);
    });
    await container.ready;
    look();
  } catch {
    // Without a service worker the app works while the page is open; "ready" is simply never said.
  }
}

export function useNewVersion(): void {
  newVersion.value?.postMessage("use-new-version");
}
