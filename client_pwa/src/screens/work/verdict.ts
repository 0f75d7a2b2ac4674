/** What a measured size says at once: within its limits, still to be worked on, or past them. */

import type { Size } from "../../engine/answers";
import type { System } from "../../base/settings";
import { shown } from "../../units/show";

export interface Verdict {
  outcome: "good" | "watch" | "stop";
  words: string;
}

const KIND: Readonly<Record<string, string>> = { mm: "length", degC: "temperature", deg: "angle", h: "duration" };

/** The kind of entry in which a size of that unit is measured. */
export function kindOf(unit: string): string {
  return KIND[unit] ?? "number";
}

/** The verdict on `measured` (in the size's own unit). Inside sizes grow as metal is taken, outside ones shrink: which
 * way is still open the name tells. */
export function verdictOn(size: Size, measured: number, system: System): Verdict {
  const by = (difference: number): string => {
    const text = shown(Math.abs(difference), size.unit, system, "limit");
    return `${text.text} ${text.unit}`.trim();
  };
  if (!size.limits) {
    const off = measured - size.value;
    if (Math.abs(off) <= 1e-9) return { outcome: "good", words: "As on the card." };
    return { outcome: "good", words: `${by(off)} ${off > 0 ? "more" : "less"} than on the card.` };
  }
  const { lower, upper } = size.limits;
  // What the card prints is rounded into its limits; a reading of the printed limit is within them.
  const hair = 1e-4 * Math.max(1, Math.abs(size.value) / 1000);
  if (measured < lower.value - hair) return short(lower.value - measured, "below", grows(size), by);
  if (measured > upper.value + hair) return short(measured - upper.value, "above", !grows(size), by);
  return { outcome: "good", words: "Within its limits." };
}

function short(off: number, side: "below" | "above", open: boolean, by: (off: number) => string): Verdict {
  const gone = `${by(off)} ${side} its ${side === "below" ? "lower" : "upper"} limit`;
  return open ? { outcome: "watch", words: `${gone}: take off more.` } : { outcome: "stop", words: `${gone}: too much is off.` };
}

/** Whether taking metal off makes this size larger. */
function grows(size: Size): boolean {
  return /bore|inside|gap|kerf|pot|groove/.test(`${size.name ?? ""} ${size.label}`);
}
