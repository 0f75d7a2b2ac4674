/** The core's names as types: src/engine/names.ts, written before types are checked and kept out of git. What
 * the core no longer declares does not compile. */

import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { coreFiles, readCore } from "./core_plugin.ts";
import type { Described, DescribedField } from "./core_plugin.ts";

const CORE = fileURLToPath(new URL("../../service/ringwright/core", import.meta.url));
const WRITTEN = fileURLToPath(new URL("../src/engine/names.ts", import.meta.url));
/** What every answer holds under a name of its own. */
const EVERYWHERE = ["figures", "findings", "chosen", "cautions"];

function inputs(tables: Described): string[] {
  const found = new Set<string>();
  const walk = (fields: readonly DescribedField[]): void => {
    for (const field of fields) {
      if (field.name) found.add(field.name);
      walk(field.items ?? []);
    }
  };
  for (const table of Object.values(tables)) walk(table.fields);
  return [...found];
}

function union(name: string, about: string, names: readonly string[]): string {
  return `/** ${about} */\nexport type ${name} =\n${names.map((each) => `  | ${JSON.stringify(each)}`).join("\n")};\n`;
}

export async function namesText(): Promise<string> {
  const { tables, vocabulary } = await readCore(coreFiles(CORE));
  return [
    "// Made from the core's catalogue by vite/names.ts: change that, not this.\n",
    union("CalculationName", "What can be worked.", Object.keys(tables)),
    union("InputName", "What can be given, entries of lists too.", inputs(tables)),
    union("FigureName", "What an answer's figures are called.", Object.keys(vocabulary.figures)),
    union("ListName", "What else an answer holds.", vocabulary.lists.filter((name) => !EVERYWHERE.includes(name))),
    union("CheckName", "What a finding may be of.", vocabulary.checks),
  ].join("\n");
}

export async function writeNames(): Promise<void> {
  const text = await namesText();
  // Written only when it changes: a file that is newer than the app would have it built again.
  if (!existsSync(WRITTEN) || readFileSync(WRITTEN, "utf8") !== text) writeFileSync(WRITTEN, text);
}
