/** What was measured at the bench, as the core's input `measured`: one record a ring, by the card's own names. */

import type { Input } from "../book/job";
import { isOfTool } from "../engine/tables";
import type { Field } from "../engine/tables";
import { parseQuantity } from "../units/parse";

const PLACE = /^route\/([a-z-]+)\/([a-z_]+)(?:\/(\d{1,3}))?$/;
/** Measured once more when the ring is done: this is the size that it has. */
const LAST = "inspect";

/** Records for the list `field`, for as many rings as are made; none while nothing of theirs is measured. An entry that cannot be read, or that no
 * ring has, is left out: the rest of the card must not wait for it, and its own place says what is wrong. */
export function ringsMeasured(measured: Readonly<Record<string, string>>, field: Field, rings: number): Input[] {
  const found = new Map<number, Map<string, string>>();
  const places = Object.entries(measured).map(([place, text]) => ({ text, parts: PLACE.exec(place) }));
  places.sort((one, other) => Number(one.parts?.[1] === LAST) - Number(other.parts?.[1] === LAST));
  for (const { text, parts } of places) {
    const size = field.items?.find((each) => each.name === parts?.[2]);
    const ring = Number(parts?.[3] ?? 1);
    if (!size || size.kind !== "length" || ring < 1 || ring > rings || !will(size, text)) continue;
    const record = found.get(ring) ?? new Map<string, string>();
    found.set(ring, record.set(size.name, text));
  }
  if (found.size === 0) return [];
  // Rings of which nothing is measured yet follow what the heat gave to those before them.
  const rows = Array.from({ length: rings }, (_each, at) => found.get(at + 1) ?? new Map<string, string>());
  for (const { name } of field.items ?? []) {
    const one = isOfTool(name) && rows.find((row) => row.has(name))?.get(name);
    if (one) rows.forEach((row) => row.has(name) || row.set(name, one));
  }
  return rows.map((row, at) => ({ ring: String(at + 1), ...Object.fromEntries(row) }));
}

function will(size: Field, text: string): boolean {
  const parsed = parseQuantity(size.kind, text, "");
  return parsed.ok && parsed.reading.value >= (size.lowest ?? 0) && parsed.reading.value <= (size.highest ?? Infinity);
}
