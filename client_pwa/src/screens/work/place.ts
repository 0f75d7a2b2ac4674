/** At which operation and ring each job was left, and when its soak is over: kept on the device, by the clock,
 * so that both are right after the phone slept or the app was closed. */

import { signal } from "@preact/signals";

const KEY = "ringwright-at-work";
/** Jobs beyond these are long done. */
const MOST = 40;

export interface AtWork {
  operation: string;
  ring: number;
  /** When the soak ends, in milliseconds since 1970; 0 while none runs. */
  soakEnds: number;
}

const NOWHERE: AtWork = { operation: "", ring: 1, soakEnds: 0 };

const kept = signal<Readonly<Record<string, AtWork>>>(read());

export function atWork(job: string): AtWork {
  return kept.value[job] ?? NOWHERE;
}

export function setAtWork(job: string, change: Partial<AtWork>): void {
  const { [job]: before = NOWHERE, ...others } = kept.peek();
  const newest = Object.entries(others).slice(1 - MOST);
  kept.value = { ...Object.fromEntries(newest), [job]: { ...before, ...change } };
  try {
    localStorage.setItem(KEY, JSON.stringify(kept.peek()));
  } catch {
    // Where nothing is kept the card begins at its first open operation.
  }
}

function read(): Record<string, AtWork> {
  try {
    const raw = JSON.parse(localStorage.getItem(KEY) ?? "{}") as Record<string, Partial<AtWork> | null>;
    const sound = Object.entries(raw).filter((entry): entry is [string, AtWork] => {
      const each = entry[1];
      return typeof each?.operation === "string" && Number.isFinite(each.ring) && Number.isFinite(each.soakEnds);
    });
    return Object.fromEntries(sound);
  } catch {
    return {};
  }
}
