/** Sizes measured at the bench: where each is kept with the job. */

import { change, job } from "./sheet";

/** The place of a size: "route/bore/bored_inside_diameter", and of the second ring and on with its number. */
export function placeOf(where: string, name: string, ring = 1): string {
  return ring === 1 ? `${where}/${name}` : `${where}/${name}/${ring}`;
}

const MOST_RINGS = 200;
/** What was measured of the first ring of which it was; "" where of none. */
export function ofFirstRing(measured: Readonly<Record<string, string>>, where: string, name: string): string {
  for (let ring = 1; ring <= MOST_RINGS; ring += 1) {
    const text = measured[placeOf(where, name, ring)];
    if (text) return text;
  }
  return "";
}

export function measure(place: string, text: string): void {
  const measured = { ...job.peek().measured };
  if (text.trim() === "") delete measured[place];
  else measured[place] = text;
  change({ measured });
}
