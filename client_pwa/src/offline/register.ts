/** Registers the service worker, asks it whether every file of the app is really kept, and says when a
 * newer version waits. Nothing is reloaded under somebody's hands. */

import { signal } from "@preact/signals";
import { keptFiles, way } from "./standing";
import type { FilesReply } from "./files_reply";

export const newVersion = signal<ServiceWorker | undefined>(undefined);
const ANSWER_MS = 20_000;

export async function registerOffline(): Promise<void> {
  if (way === "file" || import.meta.env.DEV) return;
  if (!("serviceWorker" in navigator)) {
    keptFiles.value = "cannot";
    return;
  }
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
      if (registration.active) void lookForFiles();
      if (registration.waiting && registration.active) newVersion.value = registration.waiting;
    };
    look();
    registration.addEventListener("updatefound", () => {
      registration.installing?.addEventListener("statechange", look);
    });
    await container.ready;
    look();
  } catch {
    // A refused registration: a private window, or storage that is switched off. The app works while the page is open.
    keptFiles.value = "cannot";
  }
}

/** Has the service worker count the files it keeps and fetch again what is gone. */
export async function lookForFiles(): Promise<void> {
  if (way === "file" || !("serviceWorker" in navigator)) return;
  const registration = await navigator.serviceWorker.getRegistration();
  const worker = registration?.active;
  if (!worker) return;
  const missing = await new Promise<number>((resolve) => {
    const channel = new MessageChannel();
    const late = setTimeout(() => resolve(-1), ANSWER_MS);
    channel.port1.onmessage = (event: MessageEvent<FilesReply>) => {
      clearTimeout(late);
      resolve(event.data.missing);
    };
    worker.postMessage("look-for-files", [channel.port2]);
  });
  // Without an answer nothing is known, and nothing is promised.
  if (missing >= 0) keptFiles.value = missing > 0 ? "incomplete" : "kept";
}

export function useNewVersion(): void {
  newVersion.value?.postMessage("use-new-version");
}
