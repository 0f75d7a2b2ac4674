import { fileURLToPath } from "node:url";
import ts from "typescript";
import { describe, expect, it } from "vitest";
import { namesText } from "./names.ts";

const HERE = fileURLToPath(new URL("../src", import.meta.url));
const CONFIG = fileURLToPath(new URL("../tsconfig.json", import.meta.url));

/** What the compiler has against each of those texts, beside the app's own files. */
function complaints(texts: readonly string[]): string[][] {
  const read = ts.readConfigFile(CONFIG, ts.sys.readFile);
  const { options } = ts.parseJsonConfigFileContent(read.config, ts.sys, fileURLToPath(new URL("..", import.meta.url)));
  const held = new Map(texts.map((text, place) => [`${HERE}/asked_${place}.ts`, text]));
  const host = ts.createCompilerHost(options);
  const { fileExists, getSourceFile, readFile } = host;
  host.fileExists = (name) => held.has(name) || fileExists.call(host, name);
  host.readFile = (name) => held.get(name) ?? readFile.call(host, name);
  host.getSourceFile = (name, ...rest) =>
    held.has(name) ? ts.createSourceFile(name, held.get(name)!, ts.ScriptTarget.ES2022, true) : getSourceFile.call(host, name, ...rest);
  const program = ts.createProgram([...held.keys(), `${HERE}/engine/virtual.d.ts`], options, host);
  return [...held.keys()].map((name) =>
    program.getSemanticDiagnostics(program.getSourceFile(name)).map((each) => ts.flattenDiagnosticMessageText(each.messageText, " ")),
  );
}

const GOOD = `
import type { Answer, Finding } from "./engine/answers";
import { fieldNamed, fieldsOf, figureLabel } from "./engine/tables";
import { askOnce } from "./engine/client";
export function use(answer: Answer, finding: Finding): unknown[] {
  void askOnce("methods");
  return [answer.figures.free_gap?.value, answer.tools, finding.check === "wound-on",
    fieldNamed("bore"), fieldsOf("sizing"), figureLabel("closed_gap")];
}
`;

const WRONG: readonly [string, string, string][] = [
  ["figure", "figures.free_gap", "figures.free_gapp"],
  ["figure's label", '"closed_gap"', '"closed_gapp"'],
  ["list", "answer.tools", "answer.toolz"],
  ["check", '"wound-on"', '"wound-up"'],
  ["input", '"bore"', '"boar"'],
  ["calculation", '"sizing"', '"seizing"'],
  ["question", '"methods"', '"method"'],
];

describe("names of the core in the app", () => {
  it("compile as the core declares them, and no others do", { timeout: 120_000 }, () => {
    const [good, ...wrong] = complaints([GOOD, ...WRONG.map(([, right, misspelt]) => GOOD.replace(right, misspelt))]);
    expect(good).toEqual([]);
    WRONG.forEach(([what, right, misspelt], place) => {
      expect(GOOD, what).toContain(right);
      expect(wrong[place]!.join(), what).toContain(misspelt.split(".").at(-1)!.replaceAll('"', ""));
    });
  });
  it("are all there", { timeout: 120_000 }, async () => {
    const text = await namesText();
    for (const name of ["free_gap", "wound-on", "steam_pressure", "cut_list", "bore-survey"]) expect(text).toContain(`"${name}"`);
  });
});
