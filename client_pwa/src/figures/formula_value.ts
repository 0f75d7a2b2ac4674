/** What a piece of a formula comes to, where every letter in it has a number. */

import { asWritten } from "./formula";
import type { MathNode } from "./formula";

type Values = ReadonlyMap<string, number>;

const OF_ONE: Readonly<Record<string, (of: number) => number>> = { sin: Math.sin, cos: Math.cos, tan: Math.tan, ln: Math.log, log10: Math.log10, ceil: Math.ceil };
const OF_SOME: Readonly<Record<string, (...of: number[]) => number>> = { max: Math.max, min: Math.min };

/** undefined where a letter is not known, or words stand in the way. */
export function valueOf(nodes: readonly MathNode[], values: Values): number | undefined {
  let sum = 0;
  let sign = 1;
  let term: number | undefined;
  for (const node of nodes) {
    const text = node.tag === "mo" ? asWritten(node) : "";
    if (text === "+" || text === "-") {
      if (term !== undefined) sum += sign * term;
      term = undefined;
      sign = text === "-" ? -1 : 1;
    } else if (text !== "*" && text !== "·") {
      const factor = factorOf(node, values);
      if (factor === undefined) return undefined;
      term = (term ?? 1) * factor;
    }
  }
  return term === undefined ? undefined : sum + sign * term;
}

function factorOf(node: MathNode, values: Values): number | undefined {
  const text = asWritten(node).trim();
  const known = values.get(text);
  if (known !== undefined) return known;
  if (text === "pi") return Math.PI;
  const kids = node.kids as MathNode[];
  switch (node.tag) {
    case "mn":
      return Number(text);
    case "mfrac":
      return both(kids, values, (above, below) => above / below);
    case "msup":
      return both(kids, values, Math.pow);
    case "msqrt":
      return worked(valueOf(kids, values), Math.sqrt);
    case "mrow":
      return ofRow(kids, values);
    default:
      return undefined;
  }
}

function ofRow(kids: readonly MathNode[], values: Values): number | undefined {
  const [first, second] = kids;
  if (first?.tag === "mo" && asWritten(first) === "(") return valueOf(kids.slice(1, -1), values);
  if (first?.tag !== "mi" || second?.kids[0] !== "\u2061") return valueOf(kids, values);
  const name = asWritten(first).trim();
  const given = kids.slice(2);
  if (OF_ONE[name]) return worked(valueOf(given, values), OF_ONE[name]);
  if (!OF_SOME[name] || given.length !== 1) return undefined;
  const parts: MathNode[][] = [[]];
  for (const node of (given[0]!.kids as MathNode[]).slice(1, -1)) {
    if (asWritten(node) === ",") parts.push([]);
    else parts.at(-1)!.push(node);
  }
  const numbers = parts.map((part) => valueOf(part, values));
  return numbers.every((each) => each !== undefined) ? OF_SOME[name](...numbers) : undefined;
}

function worked(of: number | undefined, how: (of: number) => number): number | undefined {
  return of === undefined ? undefined : how(of);
}

function both(kids: readonly MathNode[], values: Values, how: (one: number, other: number) => number): number | undefined {
  const [one, other] = kids.map((kid) => factorOf(kid, values));
  return one === undefined || other === undefined ? undefined : how(one, other);
}
