/** Registers the service worker, asks it whether every file of the app is really kept, and says when a
 * newer version waits. Nothing is reloaded under somebody's hands. */

import { signal } from "@preact/signals";
import { keptFiles, way } from "./standing";
import type { FilesReply, ToServiceWorker } from "./messages";

export const newVersion = signal<ServiceWorker | undefined>(undefined);
/** The newest version did not start on this device; this is the one before it. */
export const isBefore = signal(false);
/** A newer version was taken into use by another page of this app. */
export const takenElsewhere = signal(false);
const ANSWER_MS = 20_000;

const say = (worker: ServiceWorker, message: ToServiceWorker, more: Transferable[] = []): void => worker.postMessage(message, more);

/** keep: keeps what is on the screen before the page is loaded anew, false where it cannot. figuresStand: once, when they do. */
export async function registerOffline(keep: () => Promise<boolean>, figuresStand: Promise<unknown>): Promise<void> {
  if (way === "file" || import.meta.env.DEV) return;
  if (!("serviceWorker" in navigator)) {
    keptFiles.value = "cannot";
    return;
  }
  const container = navigator.serviceWorker;
  // The first to take charge brought this very page.
  let served = container.controller !== null;
  container.addEventListener("controllerchange", () => {
    if (served) void afterChange(keep);
    served = true;
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
    void figuresStand.then(() => registration.active && say(registration.active, { kind: "started", script: ownScript() }));
  } catch {
    // A refused registration: a private window, or storage that is switched off. The app works while the page is open.
    keptFiles.value = "cannot";
  }
}

const ownScript = (): string => document.querySelector<HTMLScriptElement>("script[type=module][src]")?.src ?? "";

/** The page in which it was asked for is loaded anew, and so is one that nobody looks at; any other says so. */
let asked = false;

async function afterChange(keep: () => Promise<boolean>): Promise<void> {
  newVersion.value = undefined;
  if ((asked || document.visibilityState === "hidden") && (await keep())) location.reload();
  else takenElsewhere.value = true;
}

/** What the service worker answers, or nothing where it takes too long. */
function answerOf(worker: ServiceWorker, message: ToServiceWorker): Promise<FilesReply | undefined> {
  return new Promise((resolve) => {
    const channel = new MessageChannel();
    const late = setTimeout(resolve, ANSWER_MS);
    channel.port1.onmessage = (event: MessageEvent<FilesReply>) => {
      clearTimeout(late);
      resolve(event.data);
    };
    say(worker, message, [channel.port2]);
  });
}

/** Has the service worker count the files it keeps and fetch again what is gone. */
export async function lookForFiles(): Promise<void> {
  if (way === "file" || !("serviceWorker" in navigator)) return;
  const registration = await navigator.serviceWorker.getRegistration();
  const worker = registration?.active;
  const reply = worker && (await answerOf(worker, { kind: "look-for-files" }));
  // Without an answer nothing is known, and nothing is promised.
  if (!reply) return;
  isBefore.value = reply.before;
  keptFiles.value = reply.missing > 0 ? "incomplete" : "kept";
}

export function useNewVersion(): void {
  asked = true;
  if (newVersion.value) say(newVersion.value, { kind: "use-new-version" });
}

/** Loads the page anew; what is on the screen is kept by the caller. */
export function loadAnew(): void {
  location.reload();
}

/** Tries the newest version once more, which did not start before. */
export async function tryNewest(): Promise<void> {
  const registration = await navigator.serviceWorker.getRegistration();
  // Loaded anew before that is noted, it would be the version before once more.
  if (registration?.active) await answerOf(registration.active, { kind: "try-newest" });
  location.reload();
}
