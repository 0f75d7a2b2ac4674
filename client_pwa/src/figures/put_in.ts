/** A formula with the numbers put in. Of what a method prints, the clause is taken that gives the figure; a line whose
 * numbers do not make its result is never shown. */

import { asWritten, formulaNodes, numberNode, symbolNode } from "./formula";
import type { MathNode } from "./formula";
import { valueOf } from "./formula_value";

export interface Known {
  symbol: string;
  value: number;
  unit: string;
}

export interface PutIn {
  /** The rule as it is printed. */
  rule: readonly MathNode[];
  numbers: readonly MathNode[];
  /** Symbols whose numbers stand in it. */
  used: ReadonlySet<string>;
}

/** Factors are printed to three or four digits. */
const AGREES = 2e-3;
const DIGITS = 6;

/** undefined: nothing in the formula gives this value out of these numbers alone. */
export function putIn(formula: string, { symbol, value, unit }: Known, known: readonly Known[]): PutIn | undefined {
  const names = new Set(known.map((each) => keyOf(each.symbol)));
  const clauses = parted(formulaNodes(`${formula}; ${symbol}`), [";", ",", ":"]).map((clause) => sidesOf(clause, names));
  const printed = new Map(known.map((each) => [keyOf(each.symbol), each.value]));
  const values = new Map(known.map((each) => [keyOf(each.symbol), each.unit === unit ? each.value : inRadians(each)]));
  // D = d1/a1: what another clause settles may be put in as well.
  for (const { name, rule } of clauses) {
    const settled = name && name !== keyOf(symbol) && !values.has(name) ? valueOf(rule, values) : undefined;
    if (settled === undefined) continue;
    values.set(name, settled);
    printed.set(name, settled);
  }
  let best: PutIn | undefined;
  let least = AGREES;
  for (const { rule } of clauses) {
    const worked = valueOf(rule, values);
    const off = worked === undefined ? Infinity : Math.abs(worked - value) / Math.abs(value);
    if (!(off <= least)) continue;
    const met = new Set<string>();
    const numbers = withNumbers(rule, printed, met);
    if (met.size === 0) continue;
    least = off;
    best = { rule, numbers, used: new Set(known.filter((each) => met.has(keyOf(each.symbol))).map((each) => each.symbol)) };
  }
  return best;
}

/** How the name of a number stands within a formula: a symbol, or a word. */
function keyOf(symbol: string): string {
  return /^[a-z]{3,}( [a-z]{3,})*$/.test(symbol) ? symbol : asWritten(symbolNode(symbol));
}

function inRadians({ value, unit }: Known): number {
  return unit === "deg" ? (value * Math.PI) / 180 : value;
}

/** The one name or symbol before the sign of equality, "" where there is none, and the rule behind it without the words round it. */
function sidesOf(clause: readonly MathNode[], names: ReadonlySet<string>): { name: string; rule: readonly MathNode[] } {
  const sides = parted(clause, ["="]);
  const rule = sides.at(-1)!;
  const isWord = (node: MathNode): boolean => node.tag === "mtext" && !names.has(asWritten(node).trim());
  const [called, ...more] = sides.length === 2 ? sides[0]!.filter((node, _at, all) => all.length === 1 || !isWord(node)) : [];
  const name = called && more.length === 0 ? asWritten(called).trim() : "";
  const from = rule.findIndex((node) => !isWord(node));
  const to = rule.findIndex((node, at) => at > from && isWord(node));
  return { name, rule: from < 0 ? [] : rule.slice(from, to < 0 ? undefined : to) };
}

function parted(nodes: readonly MathNode[], marks: readonly string[]): MathNode[][] {
  const parts: MathNode[][] = [[]];
  for (const node of nodes) {
    if (node.tag !== "mtext" && marks.includes(asWritten(node))) parts.push([]);
    else parts.at(-1)!.push(node);
  }
  return parts;
}

/** Side by side, two numbers would be read as one: a cross goes between. */
function withNumbers(nodes: readonly MathNode[], printed: ReadonlyMap<string, number>, met: Set<string>): MathNode[] {
  const done: MathNode[] = [];
  for (const node of nodes) {
    const next = withNumber(node, printed, met);
    const before = done.at(-1);
    const isApplied = before?.tag === "mi" && nodes[1]?.kids[0] === "\u2061";
    if (before && before.tag !== "mo" && next.tag !== "mo" && !isApplied) done.push({ tag: "mo", kids: ["×"] });
    done.push(next);
  }
  return done;
}

function withNumber(node: MathNode, printed: ReadonlyMap<string, number>, met: Set<string>): MathNode {
  const key = asWritten(node).trim();
  const number = printed.get(key);
  if (number !== undefined) {
    met.add(key);
    return numberOf(number);
  }
  const kids = node.kids.filter((kid) => typeof kid === "object");
  if (kids.length === 0) return node;
  if (node.tag === "mrow" || node.tag === "msqrt") return { ...node, kids: withNumbers(kids, printed, met) };
  return { ...node, kids: kids.map((kid) => withNumber(kid, printed, met)) };
}

function numberOf(value: number): MathNode {
  const size = numberNode(String(Number(Math.abs(value).toPrecision(DIGITS))));
  return value < 0 ? { tag: "mrow", kids: [{ tag: "mo", kids: ["("] }, { tag: "mo", kids: ["−"] }, size, { tag: "mo", kids: [")"] }] } : size;
}
