/** A remedy that was tried, as entries of the sheet: each in the unit of its entry, rounded to the side it goes to,
 * so that the rounding takes nothing back of what clears the finding. */

import type { Input, Inputs } from "../book/job";
import type { Choice } from "../engine/answers";
import { choiceWords, labelOf } from "../engine/labels";
import { fieldNamed } from "../engine/tables";
import type { CalculationName, InputName } from "../engine/names";
import type { Field } from "../engine/tables";
import { changeOf, seenBy } from "../sheet/apart";
import { shownUnit, unitNamed } from "../units/kinds";
import type { Unit } from "../units/kinds";
import { fieldParts, parseQuantity } from "../units/parse";

export interface Remedy {
  /** What is put on the sheet; undefined leaves an entry out. */
  changes: Record<string, Input | undefined>;
  /** "Set closed gap to 0.482 mm". */
  words: string;
}

/** Decimals to which a shop sets such a unit; others take four figures. */
const PLACES: Readonly<Record<string, number>> = { mm: 3, in: 4 };

/** What stands now for an input that is not given, and the unit in which one would be. */
export interface Empty {
  chosen: readonly Choice[];
  unitOf(field: Field): string;
}

/** What `apply` changes on the sheet; undefined where that is nothing, as with what the shop gave. */
export function remedyOf(apply: readonly Choice[], calculation: CalculationName, sheet: Inputs, empty: Empty): Remedy | undefined {
  const own = seenBy(calculation, sheet);
  const words: string[] = [];
  let changes: Remedy["changes"] = {};
  for (const { input, value } of apply) {
    const field = fieldNamed(input as InputName, [calculation]) ?? fieldNamed(input as InputName);
    const given = own[input];
    if (!field || (value === null && given === undefined)) return undefined;
    const label = labelOf(input, calculation);
    const name = label.replace(/^./, (letter) => letter.toLowerCase());
    const [put, said] = typeof value === "number" ? measure(field, value, given, empty) : plain(value);
    words.push(put === undefined ? `let ${name} be chosen` : typeof put === "boolean" ? `${said} \u201c${label}\u201d` : `set ${name} to ${said}`);
    changes = { ...changes, ...changeOf(calculation, { ...sheet, ...(changes as Inputs) }, input, put) };
  }
  const text = words.join(" and ");
  return { changes, words: text.charAt(0).toUpperCase() + text.slice(1) };
}

function plain(value: string | boolean | null): [Input | undefined, string] {
  if (value === null) return [undefined, ""];
  return typeof value === "boolean" ? [value, value ? "tick" : "untick"] : [value, choiceWords(value).toLowerCase()];
}

/** A number of the core's in the unit of the entry: as stored, and as said. */
function measure(field: Field, value: number, given: Input | undefined, { chosen, unitOf }: Empty): [string, string] {
  const text = typeof given === "string" ? given : "";
  const written = text === "" ? unitOf(field) : fieldParts(field.kind, text, "metric").unit;
  const unit = unitNamed(field.kind, written);
  if (!unit) return [String(value), String(value)];
  const read = parseQuantity(field.kind, text, "");
  const now = read.ok ? read.reading.value : chosen.find((choice) => choice.input === field.name)?.value;
  const number = rounded(value, unit, value > (typeof now === "number" ? now : 0));
  return [`${number} ${unit.name}`, `${number} ${shownUnit(unit.name)}`];
}

/** Upwards or downwards, but as it is where it has no more decimals. */
function rounded(core: number, { name, scale, zero }: Unit, upwards: boolean): string {
  const value = (core - zero) / scale;
  const step = 10 ** (PLACES[name] ?? 3 - Math.floor(Math.log10(Math.abs(value) || 1)));
  const steps = value * step;
  const near = Math.round(steps);
  const whole = Math.abs(steps - near) < 1e-6 ? near : upwards ? Math.ceil(steps) : Math.floor(steps);
  return String(Number((whole / step).toPrecision(12)));
}
