/** Brings the calculation core into the app: its files as one asset, its input tables as a module.
 *
 * The tables are read by running the core under the phone's own Python here, at build time, so that
 * forms stand on the screen before the engine has started and cannot drift from what it checks. */

import { readFileSync, readdirSync } from "node:fs";
import { dirname, join, posix, sep } from "node:path";
import { loadMicroPython } from "@micropython/micropython-webassembly-pyscript";
import type { Plugin } from "vite";
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

async function coreTables(files: Record<string, string>): Promise<string> {
  const python = await loadMicroPython({ heapsize: 8 * 1024 * 1024, pystack: 16 * 1024 });
  for (const [path, source] of Object.entries(files)) {
    python.FS.mkdirTree(dirname("/lib/" + path));
    python.FS.writeFile("/lib/" + path, source);
  }
  python.runPython(
    "import json\n" +
      "from ringwright.core.calculations import CALCULATIONS\n" +
      "from ringwright.core.describe import described\n" +
      "tables = json.dumps(described(CALCULATIONS))",
  );
  return folded(JSON.parse(python.globals.get("tables") as string) as Described);
}

interface DescribedField {
  name: string;
  items?: DescribedField[];
  meaning?: string;
  default?: string;
}

type Described = Record<string, { fields: DescribedField[] }>;

/** Each field once, however many calculations have it: [fields, {calculation: numbers of its fields}]. The
 * words of a field are left to the engine, which has them too: they are read only when somebody asks. */
function folded(tables: Described): string {
  const fields: string[] = [];
  const bare = ({ meaning: _said, default: _later, items, ...rest }: DescribedField): DescribedField =>
    items ? { ...rest, items: items.map(bare) } : rest;
  const numberOf = (field: DescribedField): number => {
    const text = JSON.stringify(bare(field));
    const known = fields.indexOf(text);
    return known >= 0 ? known : fields.push(text) - 1;
  };
  const calculations = Object.entries(tables).map(([name, table]) => [name, table.fields.map(numberOf)]);
  return `[[${fields.join(",")}],${JSON.stringify(Object.fromEntries(calculations))}]`;
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
        return "export default JSON.parse(" + JSON.stringify(await coreTables(coreFiles(root))) + ");";
      }
      if (id === "\0" + FILES) {
        const files = packWords(joined(coreFiles(root)));
        if (!building) {
          return `export default "data:application/octet-stream;base64,${Buffer.from(files).toString("base64")}";`;
        }
        const reference = this.emitFile({ type: "asset", name: "core.bin", source: files });
        return `export default import.meta.ROLLUP_FILE_URL_${reference};`;
      }
      return null;
    },
  };
}
