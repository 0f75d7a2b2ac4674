/** The engine: MicroPython with the calculation core in its file system. One instance a worker. */

import { loadMicroPython } from "@micropython/micropython-webassembly-pyscript";
import type { MicroPython } from "@micropython/micropython-webassembly-pyscript";
import { FIRST_CALCULATIONS } from "./first";
import { ungzipped } from "./packed";
import { plainError } from "./protocol";
import { unpackWords } from "./words";
import type { FromWorker, Parts, ToWorker } from "./protocol";

// Enough that a whole job is worked without the heap having to grow.
const HEAP_BYTES = 8 * 1024 * 1024;
const PYTHON_STACK = 16 * 1024;

interface Core {
  run(name: string, text: string): string;
  describe(): string;
  write(files: Uint8Array): void;
}

let given: Parts | undefined;

let core: Promise<Core> | undefined;
let everything: Promise<void> | undefined;

function say(message: FromWorker): void {
  postMessage(message);
}

async function bytesOf(parts: Parts, which: "wasm" | "first" | "rest"): Promise<Uint8Array<ArrayBuffer>> {
  if (parts.kind === "within") return ungzipped(parts[which]);
  const reply = await fetch(parts[which]);
  if (!reply.ok) throw new Error(`the calculation files could not be read (${reply.status})`);
  return new Uint8Array(await reply.arrayBuffer());
}

async function start(parts: Parts): Promise<Core> {
  const coming = bytesOf(parts, "first");
  const wasm = parts.kind === "within" ? URL.createObjectURL(new Blob([await bytesOf(parts, "wasm")], { type: "application/wasm" })) : parts.wasm;
  const python = await loadMicroPython({ url: wasm, heapsize: HEAP_BYTES, pystack: PYTHON_STACK });
  write(python, await coming);
  python.runPython(
    "import json\n" +
      "from ringwright.core.calculations import CALCULATIONS, run_json\n" +
      "def describe():\n" +
      " from ringwright.core.describe import described\n" +
      " return json.dumps(described(CALCULATIONS))",
  );
  return {
    run: python.globals.get("run_json") as Core["run"],
    describe: python.globals.get("describe") as Core["describe"],
    write: (files) => write(python, files),
  };
}

function write(python: MicroPython, packed: Uint8Array): void {
  // Each file begins with a line "#path".
  for (const file of unpackWords(packed).slice(1).split("\n#")) {
    const end = file.indexOf("\n");
    const path = "/lib/" + file.slice(0, end);
    python.FS.mkdirTree(path.slice(0, path.lastIndexOf("/")));
    python.FS.writeFile(path, file.slice(end + 1) + "\n");
  }
}

/** The rest of the core's files, once: for all but the first figures. */
function whole(parts: Parts): Promise<void> {
  everything ??= bytesOf(parts, "rest").then(async (files) => (await core!).write(files));
  // What could not be fetched is asked for again at the next question.
  everything.catch(() => (everything = undefined));
  return everything;
}

const isFirst = (name: string): boolean => (FIRST_CALCULATIONS as readonly string[]).includes(name);

addEventListener("message", (event: MessageEvent<ToWorker>) => {
  const message = event.data;
  if (message.kind === "start") {
    given = message.parts;
    core = start(message.parts);
    core.then(
      () => say({ kind: "ready" }),
      (error: unknown) => say({ kind: "failed", error: plainError(error) }),
    );
    return;
  }
  if (message.kind === "describe") {
    void describe();
    return;
  }
  void answer(message.ticket, message.name, message.text);
});

async function answer(ticket: number, name: string, text: string): Promise<void> {
  try {
    if (!core) throw new Error("asked before it was started");
    // Only text crosses the border: whole numbers beyond 32 bits would be cut.
    const engine = await core;
    if (!isFirst(name)) await whole(given!);
    say({ kind: "answer", ticket, text: engine.run(name, text) });
    // The rest comes when the first figures stand.
    void whole(given!).catch(() => undefined);
  } catch (error) {
    say({ kind: "broken", ticket, error: plainError(error) });
  }
}

async function describe(): Promise<void> {
  try {
    const engine = await core;
    if (engine) await whole(given!);
    say({ kind: "described", text: engine?.describe() });
  } catch {
    say({ kind: "described", text: undefined });
  }
}
