/** Where we are, kept in the fragment of the address so that one cached page answers every deep link:
 * "#/tools/<job id>" opens a job of this device, "#ring/s/<packed job>" one that travels in the link, "#/guide/<job id>/gaps" an entry
 * of the guide, "#/route/<job id>/operation-slit" one of the card. */

import { signal } from "@preact/signals";

export interface Place {
  screen: string;
  jobId: string | undefined;
  packed: string | undefined;
  /** What of the guide or card is wanted. */
  topic: string | undefined;
}

export const FIRST_SCREEN = "ring";

export function readPlace(hash: string): Place {
  const [screen = "", second, third] = hash.replace(/^#\/?/, "").split("/");
  const known = /^[a-z-]{1,20}$/.test(screen) ? screen : FIRST_SCREEN;
  if (second === "s") return { screen: known, jobId: undefined, packed: third ?? "", topic: undefined };
  const id = second !== undefined && /^[A-Za-z0-9_-]{1,64}$/.test(second) ? second : undefined;
  const topic = third !== undefined && /^[a-z\d_-]{1,64}$/.test(third) ? third : undefined;
  return { screen: known, jobId: id, packed: undefined, topic };
}

export const place = signal<Place>(readPlace(location.hash));

/** The screen before the one in view, "" at the start. */
export const cameFrom = signal("");

addEventListener("hashchange", () => {
  const [before, next] = [place.peek(), readPlace(location.hash)];
  if (next.screen !== before.screen) cameFrom.value = before.screen;
  place.value = next;
});

export function addressOf(screen: string, jobId: string, topic?: string): string {
  // With a slash after the mark: a screen of its own, not a jump within the page.
  return topic === undefined ? `#/${screen}/${jobId}` : `#/${screen}/${jobId}/${topic}`;
}

/** Shows another screen of the same job. */
export function go(screen: string, jobId: string): void {
  location.hash = addressOf(screen, jobId);
}

/** Puts the address right without a step in the browser's history. */
export function settle(screen: string, jobId: string): void {
  const { screen: before, topic } = place.peek();
  history.replaceState(history.state, "", addressOf(screen, jobId, screen === before ? topic : undefined));
  place.value = readPlace(location.hash);
}
