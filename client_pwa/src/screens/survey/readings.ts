/** Readings of a bore as a grid of heights by directions, and back to the list that the job holds. */

import type { Input, Inputs } from "../../book/job";
import { parseQuantity, splitText } from "../../units/parse";
import { fixed } from "../../units/show";

export interface Laid {
  /** As typed, with their unit: "10 mm". */
  heights: readonly string[];
  /** In degrees: "90". */
  directions: readonly string[];
}

export interface Cell {
  text: string;
  /** Its place in the list of the job. */
  row: number;
}

const MM = { in: 25.4, thou: 25.4, mm: 1 } as const;
export type GridUnit = "mm" | "in";

function entryOf(input: Input | undefined): Inputs {
  return typeof input === "object" && !Array.isArray(input) ? input : {};
}

const textOf = (input: Input | undefined): string => (typeof input === "string" ? input.trim() : "");

function place(kind: "length" | "angle", text: string): string {
  const parsed = parseQuantity(kind, text === "" ? "0" : text, kind === "length" ? "mm" : "deg");
  return parsed.ok ? String(Math.round(parsed.reading.value * 1e6) / 1e6) : text;
}

/** The grid that holds these readings, on top of what is laid out already; undefined where they fit none: two
 * in one place, or a gauge of another kind. */
export function gridOf(readings: Input | undefined, laid: Laid): { laid: Laid; cells: Map<string, Cell> } | undefined {
  const heights = [...laid.heights];
  const directions = [...laid.directions];
  const cells = new Map<string, Cell>();
  const list = Array.isArray(readings) ? readings : [];
  for (const [row, each] of list.entries()) {
    const entry = entryOf(each);
    const text = textOf(entry.diameter);
    if (text === "") continue;
    if (entry.gauge !== undefined) return undefined;
    const key = `${find(heights, "length", textOf(entry.height))}/${find(directions, "angle", textOf(entry.direction))}`;
    if (cells.has(key)) return undefined;
    cells.set(key, { text, row });
  }
  return { laid: { heights, directions }, cells };
}

/** Where that height or direction stands in the list, which it is added to when it is new. */
function find(places: string[], kind: "length" | "angle", text: string): number {
  const at = places.findIndex((each) => place(kind, each) === place(kind, text));
  return at >= 0 ? at : places.push(text === "" ? "0" : text) - 1;
}

/** The list of the job for a grid. */
export function listOf({ heights, directions }: Laid, textAt: (height: number, direction: number) => string): Input[] {
  return heights.flatMap((height, at) =>
    directions.flatMap((direction, beside) => {
      const diameter = textAt(at, beside);
      return diameter === "" ? [] : [{ height, direction, diameter }];
    }),
  );
}

/** Three heights and four directions, as a survey should have; along the stroke where the job knows it. */
export function usualGrid(stroke: Input | undefined, unit: GridUnit): Laid {
  const parsed = typeof stroke === "string" ? parseQuantity("length", stroke, unit) : undefined;
  const strokes = unit === "in" ? 4 * 25.4 : 100;
  const along = parsed?.ok ? parsed.reading.value : strokes;
  const heights = [0, 0.5, 1].map((part) => `${Number(((part * along) / MM[unit]).toFixed(unit === "in" ? 3 : 1))} ${unit}`);
  return { heights, directions: ["0", "45", "90", "135"] };
}

/** What was typed as a step from another reading: "+1.5" or "-2", in thou or in hundredths of a millimetre, or
 * "=" for the same again. undefined where it is no step. */
export function stepped(typed: string, from: string, unit: GridUnit): string | undefined {
  const text = typed.trim().replace("−", "-").replace(",", ".");
  if (from === "" || !/^(=|[+-]\s*\d*\.?\d+)$/.test(text)) return undefined;
  if (text === "=") return from;
  const parsed = parseQuantity("length", from, unit);
  if (!parsed.ok) return undefined;
  const step = Number(text.replace(/\s/g, ""));
  const [shift, least] = unit === "in" ? [3, 4] : [2, 2];
  const places = Math.max(least, decimals(splitText(from).number), decimals(text) + shift);
  const value = parsed.reading.value / MM[unit] + step / 10 ** shift;
  return `${fixed(value, Math.min(places, 7))} ${unit}`;
}

function decimals(number: string): number {
  return number.includes("/") ? 0 : (/[.,](\d+)/.exec(number)?.[1]?.length ?? 0);
}

export interface Pasted {
  heights?: string[];
  directions?: string[];
  rows: string[][];
}

/** A block of cells from a spreadsheet; undefined where it is one cell, which the box takes itself. With an empty
 * or worded corner the first row holds directions and the first column heights. */
export function pasted(text: string): Pasted | undefined {
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== "");
  const rows = lines.map((line) => line.split(line.includes("\t") ? "\t" : ";").map((cell) => cell.trim()));
  if (rows.length < 2 && (rows[0]?.length ?? 0) < 2) return undefined;
  const numeric = (cell: string | undefined): boolean => cell !== undefined && /^[+-]?[\d.,]/.test(cell);
  const [head] = rows;
  if (!head || numeric(head[0])) return { rows };
  const body = rows.slice(1);
  const directions = head.slice(1).map((cell) => splitText(cell).number);
  if (directions.length === 0 || !directions.every(numeric)) return { rows: body };
  return { heights: body.map((row) => row[0] ?? ""), directions, rows: body.map((row) => row.slice(1)) };
}
