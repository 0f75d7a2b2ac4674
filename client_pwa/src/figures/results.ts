/** Shorthand for screens: the answer, its faults and whether it is old. */

import { computed } from "@preact/signals";
import type { ReadonlySignal } from "@preact/signals";
import type { Answer, Fault } from "../engine/answers";
import type { Key } from "../engine/tables";
import { resultOf } from "../sheet/sheet";
import type { Result } from "../sheet/sheet";

export interface InView {
  result: Result;
  answer: Answer | undefined;
  faults: readonly Fault[];
  stale: boolean;
}

/** Whether a fault is of one of these inputs. */
export function isOf(names: readonly string[], fault: Fault): boolean {
  return names.includes(String(fault.path[0]));
}

export function inView(calculation: Key): InView {
  return viewOf(resultOf(calculation).value);
}

const settled = new Map<Key, ReadonlySignal<InView>>();

/** The same, but what reads it hears of an answer only, not that the next is being worked. */
export function settledView(calculation: Key): InView {
  let found = settled.get(calculation);
  if (!found) {
    let last: InView | undefined;
    found = computed(() => {
      const next = viewOf(resultOf(calculation).value);
      if (next.result.state !== "ready" || last?.result.state !== "ready" || last.answer !== next.answer) last = next;
      return last;
    });
    settled.set(calculation, found);
  }
  return found.value;
}

const NONE: readonly Fault[] = [];

function viewOf(result: Result): InView {
  const answer = result.state === "ready" ? result.answer : "before" in result ? result.before : undefined;
  return {
    result,
    answer,
    faults: result.state === "faults" ? result.faults : NONE,
    stale: result.state === "ready" ? result.stale : answer !== undefined,
  };
}
