/** The line at the foot of the page: what just happened, with the way back beside it. */

import { signal } from "@preact/signals";

export interface Saying {
  text: string;
  action?: { label: string; run(): void };
}

/** Said once, for screen readers and eyes: "Copied", "Deleted". */
export const said = signal<Saying | undefined>(undefined);
