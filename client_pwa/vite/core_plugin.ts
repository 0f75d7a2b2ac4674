/** Brings the calculation core into the app: its files as one asset, its input tables as a module.
 *
 * The tables are read by running the core under the phone's own Python here, at build time, so that
 * forms stand on the screen before the engine has started and cannot drift from what it checks. */

import { readFileSync, readdirSync } from "node:fs";
import { dirname, join, posix, sep } from "node:path";
import { loadMicroPython } from "@micropython/micropython-webassembly-pyscript";
import type { Plugin } from "vite";
import { stripPython } from "./strip_python";

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

/** Path, line end, source; one after another with a nought between: shorter than JSON, which escapes each line. */
function joined(files: Record<string, string>): string {
  return Object.entries(files)
    .map(([path, source]) => path + "\n" + source)
    .join("\0");
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

type Described = Record<string, { summary: string; fields: unknown[] }>;

/** Each field once, however many calculations have it: [fields, {calculation: [summary, numbers of its fields]}]. */
function folded(tables: Described): string {
  const fields: string[] = [];
  const numberOf = (field: unknown): number => {
    const text = JSON.stringify(field);
    const known = fields.indexOf(text);
    return known >= 0 ? known : fields.push(text) - 1;
  };
  const calculations = Object.entries(tables).map(([name, table]) => [name, [table.summary, table.fields.map(numberOf)]]);
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
        const files = joined(coreFiles(root));
        if (!building) return "export default 'data:text/plain," + encodeURIComponent(files) + "';";
        const reference = this.emitFile({ type: "asset", name: "core.txt", source: files });
        return `export default import.meta.ROLLUP_FILE_URL_${reference};`;
      }
      return null;
    },
  };
}
