/** The inputs of every calculation and the figures of every answer, as the core declares them; read from it when the app is built. */

import tables from "virtual:core-tables";
import type { CalculationName, FigureName, InputName } from "./names";

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
  /** What is taken where it is not given, in the core's unit, if that is one number. */
  usual?: number;
}

/** As the core declares it; without a name it stands in a list of bare values. */
export interface DeclaredField extends Field {
  name: InputName | "";
}

const [FIELDS, FOLDED, GROUPS, FIGURES, TOOL_SIZES] = tables;

/** What may be asked: a calculation, or one put in another way (see sheet/feeds.ts). */
export type Key = CalculationName | `${CalculationName}@${string}`;

const TABLES: Readonly<Record<string, readonly DeclaredField[]>> = Object.fromEntries(
  Object.entries(FOLDED).map(([name, numbers]) => [name, numbers.map((number) => FIELDS[number]!)]),
);

export function fieldsOf(calculation: CalculationName): readonly DeclaredField[] {
  return TABLES[calculation] ?? [];
}

export function isKnown(calculation: string): calculation is CalculationName {
  return calculation in TABLES;
}

/** The declaration of an input, from whichever of the calculations has it. */
export function fieldNamed(name: InputName, calculations = Object.keys(TABLES) as readonly CalculationName[]): DeclaredField | undefined {
  for (const calculation of calculations) {
    const found = fieldsOf(calculation).find((field) => field.name === name);
    if (found) return found;
  }
  return undefined;
}

/** What a figure is called. */
export function figureLabel(name: FigureName): string {
  return FIGURES[name]![0];
}

/** Whether a size on the card is a tool's: measured with one ring it holds for the others, until they have one of their own. */
export function isOfTool(size: string): boolean {
  return TOOL_SIZES.includes(size);
}

export function isFigure(name: string): name is FigureName {
  return name in FIGURES;
}

export interface FigureGroup {
  title: string;
  names: FigureName[];
}

/** Figures by the groups that the core puts them in, in the core's order. */
export function figureGroups(names: readonly FigureName[]): FigureGroup[] {
  const found = GROUPS.map((title): FigureGroup => ({ title, names: [] }));
  for (const name of names) found[FIGURES[name]![1]]!.names.push(name);
  return found.filter((group) => group.names.length > 0);
}
