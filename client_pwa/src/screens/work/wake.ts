/** Keeps the screen lit while the card is followed: hands are full, and a dark screen costs a glove. */

import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";

export const lit = signal<"yes" | "no" | "never">("never");

export function useLitScreen(): void {
  useEffect(() => {
    let lock: WakeLockSentinel | undefined;
    let left = false;
    const ask = async (): Promise<void> => {
      if (!("wakeLock" in navigator)) return;
      if (document.visibilityState !== "visible" || left) return;
      try {
        lock = await navigator.wakeLock.request("screen");
        if (left) return void lock.release();
        lit.value = "yes";
        // A phone that is put away lets go; it is asked for again when it comes back.
        lock.addEventListener("release", () => (lit.value = "no"));
      } catch {
        lit.value = "no";
      }
    };
    const again = (): void => void ask();
    again();
    document.addEventListener("visibilitychange", again);
    return () => {
      left = true;
      document.removeEventListener("visibilitychange", again);
      void lock?.release();
    };
  }, []);
}
