/** The numbers put in, in the units of the sheet; where the rule holds in the core's own units alone, in those. */

import type { Figure } from "../engine/answers";
import type { System } from "../base/settings";
import { inFull } from "../units/show";
import { putIn } from "./put_in";
import type { Known, PutIn } from "./put_in";

export interface PutInShown extends PutIn {
  /** Those that the numbers are in, each once. */
  units: string[];
  /** In full, in the unit that the numbers make. */
  result: string;
}

const CORE_UNITS: Readonly<Record<string, string>> = { MPa: "N/mm²", degC: "°C", "1/K": "per °C", "1/mm": "per mm", "1/min": "rpm", deg: "°" };
const DIGITS = 4;

export function putInShown(formula: string, name: string, figure: Figure, system: System): PutInShown | undefined {
  const working = figure.working ?? [];
  const asShown = (known: Known, called: string): Known => {
    const { text, unit } = inFull(known.value, known.unit, system, called);
    return { symbol: known.symbol, value: Number(text), unit };
  };
  const ways: [Known, Known[]][] = [
    [asShown(figure, name), working.map((each) => asShown(each, each.symbol))],
    [figure, working],
  ];
  for (const [wanted, known] of ways) {
    const found = putIn(formula, wanted, known);
    if (!found) continue;
    const units = [...new Set(known.filter((each) => found.used.has(each.symbol)).map((each) => words(each.unit)))].filter((unit) => unit && unit !== "°");
    return { ...found, units, result: `${Number(wanted.value.toPrecision(DIGITS))} ${words(wanted.unit)}`.trim().replace(" °", "°") };
  }
  return undefined;
}

function words(unit: string): string {
  return unit === "1" ? "" : (CORE_UNITS[unit] ?? unit);
}
