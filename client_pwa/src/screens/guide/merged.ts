/** One list of operations out of several cards. */

import type { Operation } from "../../engine/answers";

export interface Merged {
  operation: Operation;
  /** Which card it is from. */
  ring: number;
}

/** In the order of the work: what a later card adds goes behind the one that it follows there. */
export function merged(cards: readonly (readonly Operation[])[]): Merged[] {
  const found: Merged[] = [];
  cards.forEach((card, ring) => {
    let place = 0;
    for (const operation of card) {
      const known = found.findIndex((each) => each.operation.key === operation.key);
      if (known >= 0) place = known + 1;
      else found.splice(place++, 0, { operation, ring });
    }
  });
  return found;
}
