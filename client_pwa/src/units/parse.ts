/** Reads what a person types, "80", "80,5 mm", "3 1/8 in", "3⅛", "-4 thou", "120 psi", as openapi/quantity.lark has
 * it. The service reads by the same expressions, to the last digit: a job file is a request body. */

import { kindOf, LEADING, unitNamed, usualUnit } from "./kinds";
import quantity from "./quantity.json";
import { nearest, plus, times } from "./ratio";
import type { Ratio } from "./ratio";
import { refusalOf } from "./refusal";
import type { Refusal } from "./refusal";

export interface Reading {
  /** In the core's unit. */
  value: number;
  /** Name of the unit it was typed in; "" where it has none. */
  unit: string;
}

export type Parsed = { ok: true; reading: Reading } | Refusal;

const VULGAR = quantity.vulgar as unknown as Readonly<Record<string, readonly [number, number]>>;
/** Units that begin like a number. */
const RECIPROCAL = /\s1\/[a-zA-Z\u00b0]+$/;
const AROUND = new RegExp(`^(?:${quantity.space}|\\s)+|(?:${quantity.space}|\\s)+$`, "g");
/** Groups of an expression that belong to the number; what follows is the unit. */
const NUMBER_GROUPS = 7;

/** What may be meant for a number though it cannot be read, or not yet: "1,250", "3 1/". */
const MEANT = /^[+\-\u2212]?[\d.,/ \-\u00a0\u202f\u2009\u2044]*(?:[eE][+\-\u2212]?\d+)?/;

/** Splits typed or stored text into its number and its unit, both as written. */
export function splitText(text: string): { number: string; unit: string } {
  const whole = text.replace(AROUND, "");
  const read = LEADING.exec(whole)?.[0] ?? "";
  // A number that goes on after what can be read of it must not be cut there.
  const number = /^\s?[\d.,/]/.test(whole.slice(read.length)) && !RECIPROCAL.test(whole) ? MEANT.exec(whole)![0] : read;
  return { number: number.replace(AROUND, ""), unit: whole.slice(number.length).replace(AROUND, "") };
}

/** Reads `text` as an input of that kind. `unit` is the one that stands beside the entry and is taken where the
 * text names none; "" is none, so that a bare number is in the core's unit and a bare fraction is refused. */
export function parseQuantity(kind: string, text: string, unit: string): Parsed {
  const { pattern, spelled, names } = kindOf(kind);
  const match = [...text].length <= quantity.longest ? pattern.exec(text) : null;
  if (!match) return refusalOf(kind, text, unit);
  const written = match.slice(NUMBER_GROUPS + 1).find(Boolean) ?? unit;
  const number = numberOf(match);
  const found = spelled.get(written);
  if (!found) {
    if (written !== "" || (match[6] === undefined && names.length > 1)) return refusalOf(kind, text, unit);
    return { ok: true, reading: { value: nearest(number), unit: "" } };
  }
  const scaled = times(number, found.factor);
  return { ok: true, reading: { value: nearest(found.offset ? plus(scaled, found.offset) : scaled), unit: found.name } };
}

function numberOf([, sign, whole, fraction, wholeBefore, vulgar, decimal, exponent]: RegExpExecArray): Ratio {
  const signed = (over: bigint, under: bigint): Ratio => ({ over: sign === "-" || sign === "−" ? -over : over, under });
  if (fraction !== undefined) {
    const [over, under] = fraction.split(/[/\u2044]/).map(BigInt) as [bigint, bigint];
    return signed(BigInt(whole ?? 0) * under + over, under);
  }
  if (vulgar !== undefined) {
    const [over, under] = VULGAR[vulgar]!.map(BigInt) as [bigint, bigint];
    return signed(BigInt(wholeBefore ?? 0) * under + over, under);
  }
  const [digits = "", decimals = ""] = decimal!.replace(/[\u202f\u2009]/g, "").replace(",", ".").split(".");
  const power = Number((exponent ?? "0").replace("−", "-"));
  return signed(BigInt(digits + decimals) * 10n ** BigInt(Math.max(power, 0)), 10n ** BigInt(decimals.length + Math.max(-power, 0)));
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
  if (known) return { number, unit: known.name };
  return { number: stored.trim(), unit: unit === "" && number !== "" ? kindOf(kind).core : usualUnit(kind, system) };
}
