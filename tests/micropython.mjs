// Runs the calculation core under MicroPython in Node, as the phone does in its worker.
//
//   node tests/micropython.mjs <folder of the core> <folder of the MicroPython package>
//
// Reads one JSON value a line from standard input and prints one line for each:
//   [name, request]      the answer of calculations.run_json, as JSON text; a request that is itself
//                        text is passed on as it stands, so that no number is touched on the way
//   {"python": code}     what the code leaves in the global `answer`, which must be text
// A Python exception that nothing caught comes back as {"broken": its text}.

import { readFileSync, readdirSync } from "node:fs";
import { dirname, join, posix, resolve, sep } from "node:path";
import { createInterface } from "node:readline";
import { pathToFileURL } from "node:url";

const [core, engine] = process.argv.slice(2).map((folder) => resolve(folder));
const { loadMicroPython } = await import(pathToFileURL(join(engine, "micropython.mjs")));

// The same sizes as in the app's worker.
const python = await loadMicroPython({ heapsize: 8 * 1024 * 1024, pystack: 16 * 1024 });
const files = { "ringwright/__init__.py": "" };
for (const name of readdirSync(core, { recursive: true, encoding: "utf8" })) {
  if (name.endsWith(".py")) {
    const path = posix.join("ringwright/core", name.split(sep).join("/"));
    files[path] = readFileSync(join(core, name), "utf8");
  }
}
for (const [path, source] of Object.entries(files)) {
  python.FS.mkdirTree(dirname("/lib/" + path));
  python.FS.writeFile("/lib/" + path, source);
}

let runJson;

function answer(asked) {
  if (!Array.isArray(asked)) {
    python.runPython(asked.python);
    return python.globals.get("answer");
  }
  if (!runJson) {
    python.runPython("from ringwright.core.calculations import run_json");
    runJson = python.globals.get("run_json");
  }
  const [name, request] = asked;
  return runJson(name, typeof request === "string" ? request : JSON.stringify(request));
}

for await (const line of createInterface({ input: process.stdin })) {
  try {
    console.log(answer(JSON.parse(line)));
  } catch (error) {
    console.log(JSON.stringify({ broken: String(error.message || error) }));
  }
}
