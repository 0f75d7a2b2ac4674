/** Shorthand for screens: the answer, its faults and whether it is old. */

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
  const result = resultOf(calculation).value;
  const answer = result.state === "ready" ? result.answer : "before" in result ? result.before : undefined;
  return {
    result,
    answer,
    faults: result.state === "faults" ? result.faults : [],
    stale: result.state === "ready" ? result.stale : answer !== undefined,
  };
}
