/** Formulas as the core writes them, "p h1 d1/2", into MathML: fractions, powers, roots, indices, and the prose
 * between as text. A stroke divides all that is multiplied before it by the one factor behind it. */

import { GREEK, MARKS, partsOf, tokens } from "./formula_words";
import type { Token } from "./formula_words";

export interface MathNode {
  tag: string;
  kids: (MathNode | string)[];
}

const node = (tag: string, ...kids: (MathNode | string)[]): MathNode => ({ tag, kids });
const CLOSES: Readonly<Record<string, string>> = { "(": ")", "[": "]" };
/** Before these a long formula may go on in a new line. */
const BREAKS = new Set(["=", "+", "-", "<=", ">="]);

/** All that a formula says, in a row. */
export function formulaNodes(formula: string): MathNode[] {
  return new Reader(tokens(formula)).sequence("");
}

/** What stands in the line: prose, and pieces of mathematics between which the line may break. */
export function formulaPieces(nodes: readonly MathNode[]): (MathNode | string)[] {
  const pieces: (MathNode | string)[] = [];
  let piece: MathNode[] = [];
  const end = (): void => {
    if (piece.length > 0) pieces.push(node("math", ...piece));
    piece = [];
  };
  for (const each of nodes) {
    const [text] = each.kids;
    if (typeof text === "string" && (each.tag === "mtext" || text === ";" || text === ",")) {
      end();
      pieces.push(text.trim());
    } else {
      if (BREAKS.has(asWritten(each)) && piece.length > 0) end();
      piece.push(each);
    }
  }
  end();
  return pieces;
}

class Reader {
  private at = 0;
  constructor(private readonly list: readonly Token[]) {}

  private get next(): Token | undefined {
    return this.list[this.at];
  }

  private isMark(text: string): boolean {
    return this.next?.kind === "mark" && this.next.text === text;
  }

  /** Everything up to a closing mark, or to the end. */
  sequence(close: string): MathNode[] {
    const done: MathNode[] = [];
    let product: MathNode[] = [];
    const settle = (): void => {
      done.push(...product);
      product = [];
    };
    while (this.next && !(close && this.isMark(close))) {
      if (this.isMark("/") && this.at + 1 < this.list.length) {
        this.at += 1;
        if (product.length === 0 && isProse(done.at(-1))) product.push(done.pop()!);
        product = [node("mfrac", row(bare(product)), row(bare([this.factor()])))];
      } else if (this.next.kind === "word") {
        settle();
        done.push(this.raised(this.prose()));
      } else if (this.next.kind === "mark" && !(this.next.text in CLOSES)) {
        const { text } = this.next;
        this.at += 1;
        const sign = node("mo", MARKS[text] ?? text);
        if (text === "*") product.push(sign);
        else {
          settle();
          done.push(sign);
        }
      } else product.push(this.factor());
    }
    settle();
    return done;
  }

  private prose(): MathNode {
    const words: string[] = [];
    while (this.next?.kind === "word") words.push(this.list[this.at++]!.text);
    // The spaces keep it off the symbols beside it.
    return node("mtext", `\u00a0${words.join(" ")}\u00a0`);
  }

  private factor(): MathNode {
    if (this.next?.kind === "word") return this.raised(this.prose());
    const token = this.list[this.at++];
    if (!token) return node("mrow");
    let made: MathNode;
    if (token.kind === "mark" && token.text in CLOSES) made = this.group(token.text);
    else if (token.kind === "number") made = numberNode(token.text);
    else if (token.kind === "symbol") made = symbolNode(token.text);
    else if (token.kind === "function") made = this.applied(token.text);
    else made = node("mo", MARKS[token.text] ?? token.text);
    return this.raised(made);
  }

  /** With the power that follows it, if one does. */
  private raised(made: MathNode): MathNode {
    if (!this.isMark("^")) return made;
    this.at += 1;
    const minus = this.isMark("-") ? [node("mo", "−")] : [];
    this.at += minus.length;
    return node("msup", made, row([...minus, ...bare([this.factor()])]));
  }

  private group(open: string): MathNode {
    const inside = this.sequence(CLOSES[open]!);
    this.at += 1;
    return node("mrow", node("mo", open), ...inside, node("mo", CLOSES[open]!));
  }

  private applied(name: string): MathNode {
    if (name === "sqrt") return node("msqrt", ...bare([this.factor()]));
    if (name === "integral") return this.integral();
    const of = [this.factor()];
    // cos 2(theta - phase): the number belongs to the angle.
    if (of[0]!.tag === "mn" && this.isMark("(")) of.push(this.factor());
    const space = of[0]!.tag === "mrow" ? "" : "\u2009";
    return node("mrow", node("mi", `\u2009${name}${space}`), node("mo", "\u2061"), ...of);
  }

  private integral(): MathNode {
    const sign = node("mo", "∫");
    if (!this.isMark("(")) return sign;
    const limits = this.group((this.at++, "(")).kids.slice(1, -1) as MathNode[];
    const dots = limits.findIndex((each) => each.kids[0] === "…");
    if (dots < 0) return node("mrow", sign, ...limits);
    return node("msubsup", sign, row(limits.slice(0, dots)), row(limits.slice(dots + 1)));
  }
}

/** Words, or words with a power. */
function isProse(of: MathNode | string | undefined): boolean {
  return typeof of === "object" && (of.tag === "mtext" || (of.tag === "msup" && isProse(of.kids[0])));
}

function row(nodes: readonly MathNode[]): MathNode {
  return nodes.length === 1 ? nodes[0]! : node("mrow", ...nodes);
}

/** Without the brackets that a fraction, a root or a power makes needless. */
function bare(nodes: readonly MathNode[]): MathNode[] {
  const [only] = nodes;
  const inBrackets = nodes.length === 1 && only!.tag === "mrow" && (only!.kids[0] as MathNode | undefined)?.kids[0] === "(";
  return inBrackets ? (only!.kids.slice(1, -1) as MathNode[]) : [...nodes];
}

export function numberNode(text: string): MathNode {
  const [digits, power] = text.split("e");
  if (power === undefined) return node("mn", text);
  return node("mrow", node("mn", digits!), node("mo", "·"), node("msup", node("mn", "10"), node("mn", power.replace("-", "−"))));
}

export function symbolNode(symbol: string): MathNode {
  const { letter, below, dashes } = partsOf(symbol);
  const base = node("mi", letter + "′".repeat(dashes.length));
  return below.length === 0 ? base : node("msub", base, row(below.map((text) => node(/^\d/.test(text) ? "mn" : "mi", text))));
}

/** The formula again as the core writes it, but for spaces, brackets and the stroke of an index. */
export function asWritten(of: MathNode | string): string {
  if (typeof of === "string") return BACK[of] ?? [...of].map((letter) => BACK[letter] ?? letter).join("");
  const kids = of.kids.map(asWritten);
  if (of.tag === "mfrac") return `${kids[0]}/${kids[1]}`;
  if (of.tag === "msup") return `${kids[0]}^${kids[1]}`;
  // Dashes stand above the index, and are written behind it.
  if (of.tag === "msub") return kids[0]!.replace(/('*)$/, `${kids[1]}$1`);
  if (of.tag === "msqrt") return `sqrt${kids.join("")}`;
  if (of.tag === "msubsup") return `${kids[0]}${kids[1]}..${kids[2]}`;
  return kids.join("").replace("·10^", "e");
}

const BACK: Readonly<Record<string, string>> = {
  ...Object.fromEntries(Object.entries(MARKS).map(([text, sign]) => [sign, text])),
  ...Object.fromEntries(Object.entries(GREEK).map(([name, letter]) => [letter, name])),
  "∫": "integral", "′": "'", "\u2061": "",
};
