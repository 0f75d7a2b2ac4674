/** What this device's owner prefers; it belongs to the device, not to a job. */

import { effect, signal } from "@preact/signals";

/** In which units results are shown. */
export type System = "metric" | "inch";
export type Theme = "auto" | "light" | "dark" | "sunlight";

const KEY = "ringwright-settings";
const THEMES: readonly Theme[] = ["auto", "light", "dark", "sunlight"];

interface Kept {
  theme: Theme;
  system: System;
  keypad: boolean;
  /** Per name of an input, the unit in which it was last filled in. */
  units: Readonly<Record<string, string>>;
}

function read(): Kept {
  const coarse = matchMedia("(pointer: coarse)").matches;
  const kept: Kept = { theme: "auto", system: "metric", keypad: coarse, units: {} };
  try {
    const raw = JSON.parse(localStorage.getItem(KEY) ?? "{}") as Record<string, unknown>;
    if (THEMES.includes(raw.theme as Theme)) kept.theme = raw.theme as Theme;
    if (raw.system === "metric" || raw.system === "inch") kept.system = raw.system;
    if (typeof raw.keypad === "boolean") kept.keypad = raw.keypad;
    if (typeof raw.units === "object" && raw.units !== null) {
      kept.units = Object.fromEntries(Object.entries(raw.units).filter(([, unit]) => typeof unit === "string"));
    }
  } catch {
    // Unreadable or forbidden settings are no settings.
  }
  return kept;
}

const first = read();

export const theme = signal<Theme>(first.theme);
/** Units in which results are shown; an entry keeps the unit it was typed in. */
export const system = signal<System>(first.system);
/** The large keypad of this app in place of the phone's. */
export const keypad = signal(first.keypad);
export const lastUnits = signal<Readonly<Record<string, string>>>(first.units);

/** The other units, for results and for whatever is entered from here on. */
export function changeSystem(next: System): void {
  if (next === system.peek()) return;
  system.value = next;
  lastUnits.value = {};
}

effect(() => {
  document.documentElement.dataset.theme = theme.value;
  const kept: Kept = { theme: theme.value, system: system.value, keypad: keypad.value, units: lastUnits.value };
  try {
    localStorage.setItem(KEY, JSON.stringify(kept));
  } catch {
    // A device that keeps nothing still works.
  }
});
