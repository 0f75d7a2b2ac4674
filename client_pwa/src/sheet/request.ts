/** From what was typed to what the core is asked: numbers in the core's units, or the entries that cannot
 * be read, each with its path, so that the message stands at the entry itself. */

import type { Fault } from "../engine/answers";
import type { Field } from "../engine/tables";
import type { Input, Inputs } from "../book/job";
import { parseQuantity } from "../units/parse";

export interface Assembled {
  request: Record<string, unknown>;
  faults: Fault[];
  /** Per list, by its path: which row of the sheet each entry of the request came from. */
  rows: Map<string, number[]>;
}

interface Reading {
  faults: Fault[];
  rows: Map<string, number[]>;
}

export function assemble(fields: readonly Field[], inputs: Inputs): Assembled {
  const reading: Reading = { faults: [], rows: new Map() };
  return { request: readObject(fields, inputs, [], reading), ...reading };
}

/** A path in the request as a path on the sheet, where empty rows are still counted. */
export function sheetPath(path: readonly (string | number)[], rows: Map<string, number[]>): (string | number)[] {
  const found: (string | number)[] = [];
  for (const step of path) {
    found.push(typeof step === "number" ? (rows.get(found.join("/"))?.[step] ?? step) : step);
  }
  return found;
}

export function isEmpty(input: Input | undefined): boolean {
  if (input === undefined || input === "") return true;
  if (Array.isArray(input)) return input.every(isEmpty);
  return typeof input === "object" && Object.values(input).every(isEmpty);
}

function readObject(
  fields: readonly Field[],
  inputs: Inputs,
  path: (string | number)[],
  reading: Reading,
): Record<string, unknown> {
  const request: Record<string, unknown> = {};
  for (const field of fields) {
    const input = inputs[field.name];
    if (isEmpty(input)) continue;
    const value = readInput(field, input!, [...path, field.name], reading);
    if (value !== undefined) request[field.name] = value;
  }
  return request;
}

function readInput(field: Field, input: Input, path: (string | number)[], reading: Reading): unknown {
  switch (field.kind) {
    case "choice":
    case "text":
      return typeof input === "string" ? input : refuse(path, reading);
    case "flag":
      return input === true || input === "true" ? true : input === false || input === "false" ? false : refuse(path, reading);
    case "object":
      return isEntry(input) ? readObject(field.items ?? [], input, path, reading) : refuse(path, reading);
    case "records":
      return readList(field, input, path, reading);
    default:
      return typeof input === "string" ? readNumber(field, input, path, reading) : refuse(path, reading);
  }
}

function readList(field: Field, input: Input, path: (string | number)[], reading: Reading): unknown {
  if (!Array.isArray(input)) return refuse(path, reading);
  const items = field.items ?? [];
  const single = items.length === 1 && items[0]!.name === "" ? items[0]! : undefined;
  const list: unknown[] = [];
  const kept: number[] = [];
  reading.rows.set(path.join("/"), kept);
  input.forEach((entry, index) => {
    // A row left empty on the screen is no entry.
    if (isEmpty(entry)) return;
    kept.push(index);
    const here = [...path, index];
    if (single) list.push(readInput(single, entry, here, reading));
    else if (isEntry(entry)) list.push(readObject(items, entry, here, reading));
    else refuse(here, reading);
  });
  return list;
}

function readNumber(field: Field, text: string, path: (string | number)[], reading: Reading): number | undefined {
  const parsed = parseQuantity(field.kind, text, "");
  if (parsed.ok) return parsed.reading.value;
  reading.faults.push({ path, code: parsed.code, message: parsed.message, remedy: parsed.remedy });
  return undefined;
}

function isEntry(input: Input): input is Inputs {
  return typeof input === "object" && !Array.isArray(input);
}

function refuse(path: (string | number)[], reading: Reading): undefined {
  reading.faults.push({
    path,
    code: "unreadable",
    message: "this entry is not of the kind that is wanted here",
    remedy: "clear it and enter it again",
  });
  return undefined;
}
