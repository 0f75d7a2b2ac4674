/** The words of a formula as the core writes it: what is a symbol, what a function, what is said in prose. */

export type Kind = "number" | "symbol" | "function" | "word" | "mark";

export interface Token {
  kind: Kind;
  text: string;
}

export const GREEK: Readonly<Record<string, string>> = {
  alpha: "α", delta: "δ", eta: "η", kappa: "κ", mu: "μ", phi: "φ", pi: "π", psi: "ψ", rho: "ρ", sigma: "σ", tau: "τ", theta: "θ",
};
export const MARKS: Readonly<Record<string, string>> = {
  "-": "−", "*": "×", "<=": "≤", ">=": "≥", "+/-": "±", "-/+": "∓", "..": "…",
};
const FUNCTIONS = new Set(["sin", "cos", "tan", "ln", "log10", "max", "min", "ceil", "sqrt", "integral"]);
/** Short words of English; any other name of one or two letters is a symbol. */
const SHORT_WORDS = new Set(["an", "as", "at", "be", "by", "if", "in", "is", "it", "no", "of", "on", "or", "to", "up", "lb", "mm", "MP"]);
const SYMBOL = new RegExp(`^(d?(?:${Object.keys(GREEK).join("|")})|[A-Za-z]{1,2})(\\d*)(?:_([A-Za-z0-9]+))?('*)$`);
const PIECE =
  /\d+(?:\.\d+)?(?:e-?\d+)?|[A-Za-z]{3,}(?:-[A-Za-z]{2,})+(?:'s)?|[A-Za-z]{3,}'s|[A-Za-z][A-Za-z0-9]*(?:_[A-Za-z0-9]+)?'*|\+\/-|-\/\+|<=|>=|\.\.|[^\sA-Za-z0-9]/g;
/** Two capitals side by side are a product, but for these. */
const OF_TWO = new Set(["IT", "IP", "JS"]);

export function tokens(formula: string): Token[] {
  const texts = formula.match(PIECE) ?? [];
  return texts.flatMap((text, at): Token[] => {
    if (/^\d/.test(text)) return [{ kind: "number", text }];
    if (!/^[A-Za-z]/.test(text)) return [{ kind: "mark", text }];
    if (FUNCTIONS.has(text)) return [{ kind: "function", text }];
    if (/^[A-Z]{2}$/.test(text) && !OF_TWO.has(text)) return [...text].map((letter) => ({ kind: "symbol", text: letter }));
    return [{ kind: isSymbol(text, texts[at + 1]) ? "symbol" : "word", text }];
  });
}

function isSymbol(text: string, next: string | undefined): boolean {
  if (!SYMBOL.test(text) || SHORT_WORDS.has(text)) return false;
  // "a" is an article and "psi" a unit where a word follows.
  const wordFollows = next !== undefined && /^[a-z]{3,}/.test(next) && !FUNCTIONS.has(next) && !SYMBOL.test(next);
  return !((text === "a" || text === "psi") && wordFollows);
}

/** Letter, index and dashes of a symbol: kappa0 is κ with 0 below, rho'' has two dashes. */
export function partsOf(symbol: string): { letter: string; below: string[]; dashes: string } {
  const [word = "", ...indices] = symbol.split("_");
  const [, base, digits = "", index = "", dashes = ""] = SYMBOL.exec(symbol) ?? ["", word, "", indices.join(" ")];
  if (base === undefined) return { letter: symbol, below: [], dashes };
  // dphi is the small change of an angle; delta is a letter of its own.
  const change = !(base in GREEK) && base.startsWith("d");
  const greek = GREEK[change ? base.slice(1) : base];
  // Ft, Ix, Tc: a small letter behind a capital is its index.
  const [, capital, small] = greek ? [] : (/^([A-Z])([a-z])$/.exec(base) ?? []);
  const letter = greek ? (change ? `d${greek}` : greek) : (capital ?? base);
  return { letter, below: [small ?? "", digits, GREEK[index] ?? index].filter(Boolean), dashes };
}
