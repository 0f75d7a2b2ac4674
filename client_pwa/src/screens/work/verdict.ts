/** What a measured size says at once: within its limits, still to be worked on, or past them. */

import type { Size } from "../../engine/answers";
import type { System } from "../../base/settings";
import { fixed, limitShown, shown } from "../../units/show";

export interface Verdict {
  /** None where nothing says how far off it may be. */
  outcome?: "good" | "watch" | "stop";
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
  const { value, unit, limits } = size;
  // Both as they are read: what the card shows is on the card, and degrees are apart by degrees.
  const apart = (name: string, card: string): [number, string] => {
    const own = shown(measured, unit, system, name);
    const off = Number(own.text) - Number(card);
    return [off, `${fixed(Math.abs(off), card.split(".")[1]?.length ?? 0)} ${own.unit}`];
  };
  if (!limits) {
    const name = size.name ?? size.label;
    const [off, by] = apart(name, shown(value, unit, system, name).text);
    if (off === 0) return { outcome: "good", words: "As on the card." };
    return { words: `${by} ${off > 0 ? "more" : "less"} than on the card.` };
  }
  const { lower, upper } = limits;
  // What the card prints is rounded into its limits; a reading of the printed limit is within them.
  const hair = 1e-4 * Math.max(1, Math.abs(value) / 1000);
  const below = measured < lower.value - hair;
  if (!below && measured <= upper.value + hair) return { outcome: "good", words: "Within its limits." };
  const [, by] = apart("limit", limitShown((below ? lower : upper).value, unit, system, !below));
  const gone = `${by} ${below ? "below its lower" : "above its upper"} limit`;
  return below === grows(size) ? { outcome: "watch", words: `${gone}: take off more.` } : { outcome: "stop", words: `${gone}: too much is off.` };
}

/** Whether taking metal off makes this size larger. */
function grows(size: Size): boolean {
  return /bore|inside|gap|kerf|pot|groove/.test(`${size.name ?? ""} ${size.label}`);
}
