/** Reads what a person types: "80", "3,125 in", "3 1/8", "-4 thou", "120 psi".
 *
 * A comma is a decimal comma. One that could be a thousands mark beside a full stop is refused with the
 * reason, for a guess would be a thousand times wrong. */

import { shownUnit, unitNamed, unitsOf, usualUnit } from "./kinds";

export interface Reading {
  /** In the core's unit. */
  value: number;
  /** Name of the unit it was typed in; "" where the kind has none. */
  unit: string;
}

export type Parsed = { ok: true; reading: Reading } | { ok: false; message: string; remedy: string };

const VULGAR: Readonly<Record<string, string>> = {
  "½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8", "⅓": "1/3", "⅔": "2/3",
};

// Number first, unit after: the split is at the first letter, quote or degree sign, except an exponent's e.
const NUMBER_PART = /^[+\-−]?[\d.,/ \-\u00a0\u2044]*(?:[eE][+-]?\d+)?/;
const DECIMAL = /^\d+(?:\.\d*)?(?:e[+-]?\d+)?$|^\.\d+(?:e[+-]?\d+)?$/i;
const FRACTION = /^(?:(\d+)[ -]+)?(\d+)\/(\d+)$/;
// Units that begin like a number: "280 1/min" is no fraction.
const RECIPROCAL = /\s(1\/(?:min|K|degC|degF))$/;
const LONGEST = 60;

/** Splits typed or stored text into its number and its unit, both as written. */
export function splitText(text: string): { number: string; unit: string } {
  const plain = text.replace(/[½¼¾⅛⅜⅝⅞⅓⅔]/g, (sign) => " " + VULGAR[sign]);
  const whole = plain.trim();
  const reciprocal = RECIPROCAL.exec(whole);
  if (reciprocal) return { number: whole.slice(0, reciprocal.index).trim(), unit: reciprocal[1]! };
  const number = NUMBER_PART.exec(whole)![0];
  return { number: number.trim(), unit: whole.slice(number.length).trim() };
}

/** Reads `text` as an input of that kind; `unit` is taken where the text names none. */
export function parseQuantity(kind: string, text: string, unit: string): Parsed {
  if (text.length > LONGEST) return wrong("this is too long for a measure", "type one number");
  const parts = splitText(text);
  if (parts.number === "") {
    return wrong(`"${short(text)}" is not a number`, "type a number, such as " + example(kind));
  }
  const number = parseNumber(parts.number);
  if (typeof number !== "number") return number;
  const units = unitsOf(kind);
  if (units.length === 0) {
    if (parts.unit === "%") return right(number / 100, "");
    if (parts.unit !== "") return wrong(`"${short(parts.unit)}" is not wanted here`, "type the number alone");
    return right(number, "");
  }
  const written = parts.unit === "" ? unit : parts.unit;
  const found = unitNamed(kind, written);
  if (!found) {
    const names = units.map((each) => shownUnit(each.name)).join(", ");
    return wrong(`"${short(written)}" is not a unit for this`, "use one of: " + names);
  }
  return right((number + (found.before ?? 0)) * found.factor, found.name);
}

function parseNumber(written: string): number | (Parsed & { ok: false }) {
  let text = written.replace(/[\u00a0\s]+/g, " ").replace(/\u2044/g, "/").replace(/−/g, "-").trim();
  let sign = 1;
  if (text.startsWith("-") || text.startsWith("+")) {
    if (text.startsWith("-")) sign = -1;
    text = text.slice(1).trim();
  }
  const fraction = FRACTION.exec(text.replace(/ ?\/ ?/g, "/"));
  if (fraction) {
    const below = Number(fraction[3]);
    if (below === 0) return wrong("a fraction cannot have nothing below its line", "type it as 1/8, for example");
    return sign * (Number(fraction[1] ?? 0) + Number(fraction[2]) / below);
  }
  if (text.includes("/")) return wrong(`"${short(written)}" is not a fraction`, "type it as 3 1/8");
  if (text.includes(",") && text.includes(".")) {
    return wrong(`"${short(written)}" has both a comma and a full stop`, "use one of them, as the decimal mark");
  }
  const decimal = text.replace(",", ".");
  if (!DECIMAL.test(decimal)) {
    return wrong(`"${short(written)}" is not one number`, "type one number, such as 3.125 or 3 1/8");
  }
  const value = sign * Number(decimal);
  if (!Number.isFinite(value)) return wrong("this number is beyond measure", "type a smaller number");
  return value;
}

/** The stored form of a number and a unit typed apart: "3 1/8 in". */
export function joinText(number: string, unit: string): string {
  const text = number.trim();
  if (text === "") return "";
  return splitText(text).unit === "" && unit !== "" ? `${text} ${unit}` : text;
}

/** Number and unit to show in the boxes for a stored text, with the habitual unit where it names none. */
export function fieldParts(kind: string, stored: string, system: "metric" | "inch"): { number: string; unit: string } {
  const { number, unit } = splitText(stored);
  const known = unitNamed(kind, unit);
  if (known) return { number: stored.slice(0, stored.length - unit.length).trim() || number, unit: known.name };
  return { number: stored.trim(), unit: usualUnit(kind, system) };
}

function example(kind: string): string {
  return kind === "length" ? "80 or 3 1/8" : kind === "pressure" ? "120" : "10";
}

function short(text: string): string {
  return text.length > 24 ? text.slice(0, 24) + "…" : text;
}

function right(value: number, unit: string): Parsed {
  return { ok: true, reading: { value, unit } };
}

function wrong(message: string, remedy: string): Parsed & { ok: false } {
  return { ok: false, message, remedy };
}
