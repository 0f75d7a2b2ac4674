/** The rack after a cut list was cut: bars that are gone, and what is left of them. */

import type { Quantity } from "../engine/answers";
import { splitText } from "../units/parse";
import type { Input, Inputs } from "./job";
import { namedBars } from "./shop";

export interface Cut {
  bar: string;
  /** Whether the bar lies in the rack. */
  have: boolean;
  alike: number;
  bar_length: Quantity;
  sticks: { set: string; blanks: number; stick_length: Quantity }[];
  offcut: Quantity;
  offcut_kept: boolean;
}

export function rackAfter(bars: Input | undefined, cuts: readonly Cut[]): Inputs[] {
  const rack = namedBars(bars);
  const rest: Inputs[] = [];
  for (const cut of cuts) {
    const bar = cut.have ? rack.find((each) => each.name === cut.bar) : undefined;
    if (!bar) continue;
    bar.count = String(countOf(bar) - cut.alike);
    if (cut.offcut_kept) rest.push({ ...bar, name: `${(typeof bar.name === "string" ? bar.name : "").replace(/, rest.*$/, "")}, rest`, length: shorter(bar.length, cut.offcut.value), count: String(cut.alike) });
  }
  return namedBars([...rack.filter((bar) => countOf(bar) > 0), ...rest]);
}

function countOf(bar: Inputs): number {
  const count = typeof bar.count === "string" ? Number(bar.count) : 1;
  return Number.isFinite(count) ? count : 1;
}

/** A length in the unit that the bar's own is in, rounded down: no bar is longer on paper than in the rack. */
function shorter(own: Input | undefined, mm: number): string {
  const inch = typeof own === "string" && /^(in|"|″|inch|inches)$/.test(splitText(own).unit);
  return inch ? `${Math.floor((mm / 25.4) * 100 + 1e-6) / 100} in` : `${Math.floor(mm * 10 + 1e-6) / 10} mm`;
}
