/** In which unit a bare number is taken. */

import type { Field } from "../engine/tables";
import { lastUnits, system } from "../base/settings";
import { unitNamed, unitsOf, usualUnit } from "../units/kinds";
import { parseQuantity } from "../units/parse";

/** Of an empty entry: the unit in which it was last filled in, on whatever job, else the usual one. */
export function unitToBeginWith(field: Field): string {
  const last = lastUnits.value[field.name];
  return last !== undefined && unitNamed(field.kind, last) ? last : usualUnit(field.kind, system.value, field.name);
}

export function unitUsed(field: Field, unit: string): void {
  // Thou are for the small differences of one entry; nobody means the next size in them.
  if (unit === "" || unit === "thou" || lastUnits.peek()[field.name] === unit) return;
  lastUnits.value = { ...lastUnits.peek(), [field.name]: unit };
}

/** The unit in which a bare number can be meant: the first of the wanted ones, then of all, in which it lies
 * within the bounds of the field. undefined where the first wanted one stands, or none is better. */
export function likelyUnit(field: Field, number: string, wanted: readonly string[]): string | undefined {
  const fits = (unit: string): boolean => {
    const parsed = parseQuantity(field.kind, number, unit);
    if (!parsed.ok) return false;
    const { value } = parsed.reading;
    return value >= (field.lowest ?? -Infinity) && value <= (field.highest ?? Infinity);
  };
  const [first] = wanted;
  if (first === undefined || field.kind === "temperature" || fits(first)) return first;
  const usual = usualUnit(field.kind, system.peek());
  return [...wanted, usual, ...unitsOf(field.kind).map((unit) => unit.name)].find(fits);
}
