/** By which way the app came to this device, and whether it will open here without signal: said only when
 * it is so. A browser keeps an app from a secure address alone; a file on the device needs no keeping. */

import { computed, signal } from "@preact/signals";

export type Way =
  /** A file on this device. */
  | "file"
  /** A secure address. */
  | "secure"
  /** The very machine that serves it, which browsers trust without https. */
  | "this-machine"
  /** Plain http from elsewhere. */
  | "plain";

export type Keeping =
  /** Every file of the app is on this device. */
  | "kept"
  /** On its way. */
  | "filling"
  /** Some files are gone and could not be fetched again. */
  | "incomplete"
  /** This address, or this browser, keeps no app. */
  | "cannot";

const THIS_MACHINE = /^(localhost|127(\.\d+){3}|\[::1\])$/;

export function wayOf(protocol: string, host: string): Way {
  if (protocol === "file:") return "file";
  if (protocol === "https:") return "secure";
  return THIS_MACHINE.test(host) ? "this-machine" : "plain";
}

export const way: Way = wayOf(location.protocol, location.hostname);
/** As far as the service worker has told; a file needs none. */
export const keptFiles = signal<Keeping>(way === "file" ? "kept" : "serviceWorker" in navigator ? "filling" : "cannot");
export const opensWithoutSignal = computed(() => keptFiles.value === "kept");

/** What is said of it, and what to do where there is something to do. */
export const standingWords = computed((): { text: string; remedy: string } => {
  if (way === "file") {
    return { text: "This is the app as one file on this device: it opens with no signal, as often as the file is opened.", remedy: "" };
  }
  switch (keptFiles.value) {
    case "kept":
      return { text: "Ready for offline use: the app and all its calculations work with no signal.", remedy: "" };
    case "filling":
      return { text: "Not yet kept for offline use.", remedy: "Leave this page open for a moment while there is a signal." };
    case "incomplete":
      return {
        text: "Part of the app is missing on this device, so it may not open without signal.",
        remedy: "Open this page once more where there is a signal: what is missing is fetched again.",
      };
    case "cannot":
      return way === "plain"
        ? {
            text: "This address cannot be kept for use without signal: browsers keep an app only from a secure address (https).",
            remedy: "On the machine that serves it, run service/start --phone and open the address it shows. Or take the app as one file, below.",
          }
        : {
            text: "This browser keeps no app for use without signal (a private window, or it is switched off).",
            remedy: "Open this address in an ordinary window of another browser, or take the app as one file, below.",
          };
  }
});

const APPLE_PHONE = /iPhone|iPad|iPod/;

/** An iPhone offers no button for it: a person has to be told. An iPad calls itself a Mac, but has touch. */
export const onApplePhone = APPLE_PHONE.test(navigator.userAgent) || (/Macintosh/.test(navigator.userAgent) && navigator.maxTouchPoints > 1);
export const opensAsApp = (): boolean => matchMedia("(display-mode: standalone)").matches || (navigator as { standalone?: boolean }).standalone === true;

interface InstallOffer extends Event {
  prompt(): Promise<unknown>;
}

/** The browser's own offer to put the app on the home screen, kept until the person wants it. */
export const installOffer = signal<InstallOffer | undefined>(undefined);

addEventListener("beforeinstallprompt", (event) => {
  event.preventDefault();
  installOffer.value = event as InstallOffer;
});
addEventListener("appinstalled", () => (installOffer.value = undefined));

export async function install(): Promise<void> {
  const offer = installOffer.value;
  installOffer.value = undefined;
  await offer?.prompt();
}
