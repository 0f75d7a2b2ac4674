import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { asWritten, formulaNodes, formulaPieces } from "./formula";
import type { MathNode } from "./formula";

const service = fileURLToPath(new URL("../../../service", import.meta.url));
const LIST = "import json; from ringwright.core.reference import calculate_methods as c; print(json.dumps([m['formula'] for m in c({})['methods']]))";
const formulas = JSON.parse(execFileSync("python3", ["-c", LIST], { env: { ...process.env, PYTHONPATH: service }, encoding: "utf-8" })) as string[];

const mark = (text: string): string => text.replace(/[\s()_]/g, "");

function xml(of: MathNode | string): string {
  return typeof of === "string" ? of : `<${of.tag}>${of.kids.map(xml).join("")}</${of.tag}>`;
}
const set = (formula: string): string => formulaPieces(formulaNodes(formula)).map(xml).join(" ");

test.each(formulas)("nothing is lost or added: %s", (formula) => {
  expect(mark(formulaPieces(formulaNodes(formula)).map(asWritten).join(""))).toBe(mark(formula));
});

test.each(formulas)("no symbol keeps its code, no fraction or power an empty place: %s", (formula) => {
  const text = set(formula);
  expect(text).not.toMatch(/[_^]|<mrow><\/mrow>|<m[in]><\/m[in]>/);
  expect(text).not.toMatch(/>(alpha|delta|eta|kappa|mu|phi|pi|psi|rho|sigma|tau|theta|sqrt|integral)\d*</);
});

test("a stroke divides the product before it by the one factor behind it", () => {
  expect(set("Ft = p h1 d1/2")).toBe(
    "<math><msub><mi>F</mi><mi>t</mi></msub></math> <math><mo>=</mo><mfrac><mrow><mi>p</mi><msub><mi>h</mi><mn>1</mn></msub><msub><mi>d</mi><mn>1</mn></msub></mrow><mn>2</mn></mfrac></math>",
  );
  expect(set("9 pi/4 p")).toBe("<math><mfrac><mrow><mn>9</mn><mi>π</mi></mrow><mn>4</mn></mfrac><mi>p</mi></math>");
});

test("brackets go where the fraction says it, and stay where a product needs them", () => {
  expect(set("a/(b + c) (d - e)")).toBe(
    "<math><mfrac><mi>a</mi><mrow><mi>b</mi><mo>+</mo><mi>c</mi></mrow></mfrac><mrow><mo>(</mo><mi>d</mi><mo>−</mo><mi>e</mi><mo>)</mo></mrow></math>",
  );
});

test("powers, roots, limits of an integral, dashes", () => {
  expect(set("x^(2/k)")).toBe("<math><msup><mi>x</mi><mfrac><mn>2</mn><mi>k</mi></mfrac></msup></math>");
  expect(set("D^-0.7")).toBe("<math><msup><mi>D</mi><mrow><mo>−</mo><mn>0.7</mn></mrow></msup></math>");
  expect(set("sqrt(k - 1)")).toBe("<math><msqrt><mi>k</mi><mo>−</mo><mn>1</mn></msqrt></math>");
  expect(set("delta = sigma_b dphi")).toBe(
    "<math><mi>δ</mi></math> <math><mo>=</mo><msub><mi>σ</mi><mi>b</mi></msub><mi>dφ</mi></math>",
  );
  expect(set("integral(0..pi) w''")).toBe("<math><msubsup><mo>∫</mo><mn>0</mn><mi>π</mi></msubsup><mi>w′′</mi></math>");
});

test("a name of several words is one side of a fraction, and a word may have a power", () => {
  expect(set("indicated steam/feed water measured")).toBe(
    "<math><mfrac><mtext>\u00a0indicated steam\u00a0</mtext><mtext>\u00a0feed water measured\u00a0</mtext></mfrac></math>",
  );
  expect(set("effect^2")).toBe("<math><msup><mtext>\u00a0effect\u00a0</mtext><mn>2</mn></msup></math>");
});

test("an article and a unit are prose, and so is what is said between", () => {
  expect(set("a book gives 0.002")).toBe("a book gives <math><mn>0.002</mn></math>");
  expect(set("psi absolute")).toBe("psi absolute");
});
