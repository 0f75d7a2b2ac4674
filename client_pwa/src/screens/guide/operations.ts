/** Every operation that a card can have: those of the sample rings, each from the first ring that has it. */

import { signal } from "@preact/signals";
import type { Operation } from "../../engine/answers";
import { ask } from "../../engine/client";
import { merged } from "./merged";
import { RINGS } from "./samples";
import type { Sample } from "./samples";

export interface Shown {
  operation: Operation;
  ring: Sample;
}

export const operations = signal<readonly Shown[]>([]);

let asked = false;

export function needOperations(): void {
  if (asked) return;
  asked = true;
  const cards = RINGS.map((): Operation[] | undefined => undefined);
  RINGS.forEach((ring, at) =>
    ask(`guide@card${at}`, "route", ring, (outcome) => {
      cards[at] = outcome.state === "answer" ? ((outcome.answer.operations ?? []) as Operation[]) : [];
      if (cards.every((card) => card !== undefined)) operations.value = merged(cards).map(({ operation, ring }) => ({ operation, ring: RINGS[ring]! }));
    }),
  );
}
