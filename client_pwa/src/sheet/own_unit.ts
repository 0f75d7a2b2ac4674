/** A refusal of the core in the unit that was typed: "Bore is 9999 in. Give 0.394 to 35.4 in." The core knows its
 * own units only; the numbers it sends are said here, and a unit is offered in which the number would do. */

import type { Input, Inputs } from "../book/job";
import type { Fault } from "../engine/answers";
import { labelOf } from "../engine/labels";
import type { Field } from "../engine/tables";
import { kindOf, shownUnit, unitNamed, unitsOf } from "../units/kinds";
import type { Unit } from "../units/kinds";
import { joinText, splitText } from "../units/parse";

/** `fault` with its words in the unit typed on the sheet, at a path of the sheet. */
export function inOwnUnit(fault: Fault, fields: readonly Field[], inputs: Inputs, calculation = ""): Fault {
  if (fault.code !== "range" || fault.value === undefined) return fault;
  const { field, text } = askedAt(fields, inputs, fault.path);
  if (!field || typeof text !== "string") return fault;
  const typed = splitText(text);
  const units = unitsOf(field.kind);
  const unit = typed.unit === "" ? unitNamed(field.kind, kindOf(field.kind).core) : unitNamed(field.kind, typed.unit);
  if (units.length > 0 && !unit) return fault;
  const name = unit ? shownUnit(unit.name) : "";
  const [lowest, highest] = [fault.lowest, fault.highest].map((each) => (each && unit ? outOf(each.value, unit) : each?.value));
  const low = lowest === undefined ? "" : `${fault.more_than ? "more than " : ""}${bound(lowest, true)}`;
  const high = highest === undefined ? "" : bound(highest, false);
  const joint = fault.more_than ? " and at most " : " to ";
  const range = low && high ? low + joint + high : low ? low + (fault.more_than ? "" : " or more") : `at most ${high}`;
  const likely = unit && units.find((each) => each !== unit && wouldDo(typed.number, each, unit, fault));
  const offer = likely && joinText(typed.number, likely.name);
  return {
    ...fault,
    message: `${labelOf(field.name, calculation)} is ${`${typed.number} ${name}`.trim()}`,
    remedy: `give ${`${range} ${name}`.trim()}${likely ? `; did you mean ${typed.number} ${shownUnit(likely.name)}?` : ""}`,
    ...(offer ? { offer } : {}),
  };
}

/** The same number in another unit, held to the limits. */
function wouldDo(number: string, other: Unit, unit: Unit, fault: Fault): boolean {
  if (!(fault.value && fault.value.value > 0) || !/\d/.test(number)) return false;
  const meant = outOf(fault.value.value, unit) * other.scale + other.zero;
  return (!fault.lowest || meant >= fault.lowest.value) && (!fault.highest || meant <= fault.highest.value);
}

function outOf(core: number, unit: Unit): number {
  return (core - unit.zero) / unit.scale;
}

/** Three figures, rounded to the inner side: a limit that is told will do. */
function bound(value: number, lowest: boolean): string {
  if (Number.isInteger(value) && Math.abs(value) < 1e6) return String(value);
  const step = 10 ** (Math.floor(Math.log10(Math.abs(value))) - 2);
  const steps = lowest ? Math.ceil(value / step - 1e-9) : Math.floor(value / step + 1e-9);
  return String(Number((steps * step).toPrecision(3)));
}

function askedAt(fields: readonly Field[], inputs: Inputs, path: Fault["path"]): { field: Field | undefined; text: Input | undefined } {
  let field: Field | undefined;
  let within: readonly Field[] = fields;
  let text: Input | undefined = inputs;
  for (const step of path) {
    if (typeof step === "string") {
      field = within.find((each) => each.name === step);
      within = field?.items ?? [];
      text = typeof text === "object" && !Array.isArray(text) ? text[step] : undefined;
    } else {
      if (within.length === 1 && within[0]!.name === "") field = within[0];
      text = Array.isArray(text) ? text[step] : undefined;
    }
  }
  return { field, text };
}
