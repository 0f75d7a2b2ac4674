/** Which entry the large keypad writes to. */

import { signal } from "@preact/signals";

export interface PadTarget {
  element: HTMLInputElement;
  label: string;
  kind: string;
  units: readonly { name: string; shown: string }[];
  unit: string;
  setUnit(unit: string): void;
  /** Where the entry is one of many: the way to the next, in place of "Done". */
  next?: { label: string; run(): void };
  /** What may be typed in one tap; with `goOn` the next entry follows at once. */
  steps?: readonly { shown: string; said: string; text: string; goOn: boolean }[];
}

export const padTarget = signal<PadTarget | undefined>(undefined);

/** Writes at the caret, as typing would, so that the entry hears of it by its own input event. */
export function typeInto(element: HTMLInputElement, text: string): void {
  const start = element.selectionStart ?? element.value.length;
  const end = element.selectionEnd ?? start;
  element.setRangeText(text, start, end, "end");
  element.dispatchEvent(new InputEvent("input", { bubbles: true, inputType: "insertText" }));
}

export function eraseIn(element: HTMLInputElement): void {
  const start = element.selectionStart ?? element.value.length;
  const end = element.selectionEnd ?? start;
  element.setRangeText("", start === end ? Math.max(0, start - 1) : start, end, "end");
  element.dispatchEvent(new InputEvent("input", { bubbles: true, inputType: "deleteContentBackward" }));
}

/** A whole number before it is parted from its fraction by a space. */
export function typeFraction(element: HTMLInputElement, fraction: string): void {
  const before = element.value.slice(0, element.selectionStart ?? element.value.length);
  typeInto(element, /\d$/.test(before) ? " " + fraction : fraction);
}
