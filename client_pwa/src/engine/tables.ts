/** The inputs of every calculation, as the core declares them; read from it when the app is built. */

import tables from "virtual:core-tables";

export interface Field {
  name: string;
  kind: string;
  unit?: string;
  lowest?: number;
  highest?: number;
  choices?: string[];
  items?: Field[];
  above_lowest?: boolean;
  symbol?: string;
  required?: boolean;
}

const [FIELDS, FOLDED] = tables;

const TABLES: Readonly<Record<string, readonly Field[]>> = Object.fromEntries(
  Object.entries(FOLDED).map(([name, numbers]) => [name, numbers.map((number) => FIELDS[number]!)]),
);

export function fieldsOf(calculation: string): readonly Field[] {
  return TABLES[calculation] ?? [];
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
