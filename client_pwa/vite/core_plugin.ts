/** Brings the calculation core into the app: its files as one asset, its input tables as a module.
 *
 * The tables are read by running the core under the phone's own Python here, at build time, so that
 * forms stand on the screen before the engine has started and cannot drift from what it checks. */

import { readFileSync, readdirSync } from "node:fs";
import { dirname, join, posix, sep } from "node:path";
import { loadMicroPython } from "@micropython/micropython-webassembly-pyscript";
import type { Plugin } from "vite";
import { FIRST_CALCULATIONS } from "../src/engine/first.ts";
import { packWords } from "./pack_words.ts";
import { stripPython } from "./strip_python.ts";

const TABLES = "virtual:core-tables";
const FILES = "virtual:core-files";
const PACKAGE = "ringwright/core";

export function coreFiles(root: string): Record<string, string> {
  const files: Record<string, string> = { "ringwright/__init__.py": "" };
  const found = readdirSync(root, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".py"))
    .sort();
  for (const name of found) {
    files[posix.join(PACKAGE, name.split(sep).join("/"))] = stripPython(
      readFileSync(join(root, name), "utf8"),
    );
  }
  return files;
}

/** Each file as a line "#path" (no source line begins so: comments are gone) and its source. */
function joined(files: Record<string, string>): string {
  return Object.entries(files)
    .map(([path, source]) => `#${path}\n${source}`)
    .join("");
}

/** Inputs of every calculation, and the names that answers may hold, as the phone's own Python tells them. */
export async function readCore(files: Record<string, string>): Promise<{ tables: Described; vocabulary: Vocabulary }> {
  const python = await loadMicroPython({ heapsize: 8 * 1024 * 1024, pystack: 16 * 1024 });
  for (const [path, source] of Object.entries(files)) {
    python.FS.mkdirTree(dirname("/lib/" + path));
    python.FS.writeFile("/lib/" + path, source);
  }
  python.runPython(
    "import json\n" +
      "from ringwright.core.calculations import CALCULATIONS\n" +
      "from ringwright.core.describe import described, vocabulary\n" +
      "tables = json.dumps(described(CALCULATIONS))\n" +
      "names = json.dumps(vocabulary(CALCULATIONS))",
  );
  return {
    tables: JSON.parse(python.globals.get("tables") as string) as Described,
    vocabulary: JSON.parse(python.globals.get("names") as string) as Vocabulary,
  };
}

/** The files that are read for the first figures, as the phone's own Python reads them. */
async function firstFiles(files: Record<string, string>): Promise<Set<string>> {
  const python = await loadMicroPython({ heapsize: 8 * 1024 * 1024, pystack: 16 * 1024 });
  for (const [path, source] of Object.entries(files)) {
    python.FS.mkdirTree(dirname("/lib/" + path));
    python.FS.writeFile("/lib/" + path, source);
  }
  const asked = ['{"bore": 79.375}', '{"bore": 150.0, "ring_type": "plain"}'];
  const questions = FIRST_CALCULATIONS.flatMap((name) => asked.map((text) => `run_json('${name}', '${text}')\n`));
  python.runPython(
    "import json, sys\nfrom ringwright.core.calculations import run_json\n" +
      questions.join("") +
      "names = json.dumps([name for name in sys.modules if name.startswith('ringwright')])",
  );
  const names = JSON.parse(python.globals.get("names") as string) as string[];
  const paths = names.map((name) => name.replaceAll(".", "/"));
  return new Set(Object.keys(files).filter((path) => paths.includes(path.replace(/(\/__init__)?\.py$/, ""))));
}

export interface DescribedField {
  name: string;
  items?: DescribedField[];
  meaning?: string;
  default?: string;
}

export type Described = Record<string, { fields: DescribedField[] }>;

export interface Vocabulary {
  figures: Record<string, { label: string; group: string; symbol: string }>;
  lists: string[];
  checks: string[];
  tool_sizes: string[];
}

/** Each field once, however many calculations have it: [fields, {calculation: numbers of its fields}, groups,
 * {figure: [label, number of its group]}, sizes that are a tool's]. The
 * words of a field are left to the engine, which has them too: they are read only when somebody asks. */
function folded({ tables, vocabulary }: { tables: Described; vocabulary: Vocabulary }): string {
  const fields: string[] = [];
  const bare = ({ meaning: _said, default: _later, items, ...rest }: DescribedField): DescribedField =>
    items ? { ...rest, items: items.map(bare) } : rest;
  const numberOf = (field: DescribedField): number => {
    const text = JSON.stringify(bare(field));
    const known = fields.indexOf(text);
    return known >= 0 ? known : fields.push(text) - 1;
  };
  const calculations = Object.entries(tables).map(([name, table]) => [name, table.fields.map(numberOf)]);
  const groups = [...new Set(Object.values(vocabulary.figures).map((figure) => figure.group))];
  const figures = Object.entries(vocabulary.figures).map(([name, { label, group }]) => [name, [label, groups.indexOf(group)]]);
  const rest = [Object.fromEntries(calculations), groups, Object.fromEntries(figures), vocabulary.tool_sizes].map((each) => JSON.stringify(each));
  return `[[${fields.join(",")}],${rest.join(",")}]`;
}

export function corePlugin(root: string): Plugin {
  let building = false;
  return {
    name: "ringwright-core",
    configResolved(config) {
      building = config.command === "build";
    },
    resolveId: (id) => (id === TABLES || id === FILES ? "\0" + id : null),
    async load(id) {
      if (id === "\0" + TABLES) {
        return "export default JSON.parse(" + JSON.stringify(folded(await readCore(coreFiles(root)))) + ");";
      }
      if (id === "\0" + FILES) {
        const files = coreFiles(root);
        const needed = await firstFiles(files);
        const bundle = (first: boolean): Uint8Array =>
          packWords(joined(Object.fromEntries(Object.entries(files).filter(([path]) => needed.has(path) === first))));
        const parts = { first: bundle(true), rest: bundle(false) };
        const lines = Object.entries(parts).map(([name, bytes]) => {
          if (!building) return `export const ${name} = "data:application/octet-stream;base64,${Buffer.from(bytes).toString("base64")}";`;
          const reference = this.emitFile({ type: "asset", name: `core-${name}.bin`, source: bytes });
          return `export const ${name} = import.meta.ROLLUP_FILE_URL_${reference};`;
        });
        return lines.join("\n");
      }
      return null;
    },
  };
}
