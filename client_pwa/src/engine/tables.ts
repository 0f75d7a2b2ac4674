/** The inputs of every calculation, as the core declares them; read from it when the app is built. */

import tables from "virtual:core-tables";

export interface Field {
  name: string;
  kind: string;
  meaning: string;
  unit?: string;
  default?: string;
  lowest?: number;
  highest?: number;
  choices?: string[];
  items?: Field[];
  above_lowest?: boolean;
  symbol?: string;
  required?: boolean;
}

export interface CalculationTable {
  summary: string;
  fields: Field[];
}

const [FIELDS, FOLDED] = tables;

export const TABLES: Readonly<Record<string, CalculationTable>> = Object.fromEntries(
  Object.entries(FOLDED).map(([name, [summary, numbers]]) => [name, { summary, fields: numbers.map((number) => FIELDS[number]!) }]),
);

export function fieldsOf(calculation: string): readonly Field[] {
  return TABLES[calculation]?.fields ?? [];
}

export function isKnown(calculation: string): boolean {
  return calculation in TABLES;
}

/** The declaration of an input, from whichever of the calculations has it. */
export function fieldNamed(name: string, calculations: readonly string[] = Object.keys(TABLES)): Field | undefined {
  for (const calculation of calculations) {
    const found = fieldsOf(calculation).find((field) => field.name === name);
    if (found) return found;
  }
  return undefined;
}
