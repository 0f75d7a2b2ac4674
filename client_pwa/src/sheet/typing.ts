/** Whether a number is being typed just now: from a key until the entry is left or the hand has rested. Until
 * then nobody wants to hear that "2", which will be "2 7/8 in", is no bore. */

import { signal } from "@preact/signals";

const REST_MS = 1500;

export const typing = signal(false);

let timer: ReturnType<typeof setTimeout> | undefined;

export function keyTyped(): void {
  clearTimeout(timer);
  timer = setTimeout(typingEnded, REST_MS);
  typing.value = true;
}

export function typingEnded(): void {
  clearTimeout(timer);
  typing.value = false;
}
