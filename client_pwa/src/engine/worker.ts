/** The engine: MicroPython with the calculation core in its file system. One instance a worker. */

import { loadMicroPython } from "@micropython/micropython-webassembly-pyscript";
import { plainError } from "./protocol";
import { unpackWords } from "./words";
import type { CoreUrls, FromWorker, ToWorker } from "./protocol";

// Enough that a whole job is worked without the heap having to grow.
const HEAP_BYTES = 8 * 1024 * 1024;
const PYTHON_STACK = 16 * 1024;

interface Core {
  run(name: string, text: string): string;
  describe(): string;
}

let core: Promise<Core> | undefined;

function say(message: FromWorker): void {
  postMessage(message);
}

async function start(urls: CoreUrls): Promise<Core> {
  const coreBytes = fetch(urls.files).then((reply) => {
    if (!reply.ok) throw new Error(`the calculation files could not be read (${reply.status})`);
    return reply.arrayBuffer();
  });
  const python = await loadMicroPython({ url: urls.wasm, heapsize: HEAP_BYTES, pystack: PYTHON_STACK });
  // Each file begins with a line "#path".
  for (const file of unpackWords(new Uint8Array(await coreBytes)).slice(1).split("\n#")) {
    const end = file.indexOf("\n");
    const path = "/lib/" + file.slice(0, end);
    python.FS.mkdirTree(path.slice(0, path.lastIndexOf("/")));
    python.FS.writeFile(path, file.slice(end + 1) + "\n");
  }
  python.runPython(
    "import json\n" +
      "from ringwright.core.calculations import CALCULATIONS, run_json\n" +
      "from ringwright.core.describe import described\n" +
      "def describe(): return json.dumps(described(CALCULATIONS))",
  );
  return {
    run: python.globals.get("run_json") as Core["run"],
    describe: python.globals.get("describe") as Core["describe"],
  };
}

addEventListener("message", (event: MessageEvent<ToWorker>) => {
  const message = event.data;
  if (message.kind === "start") {
    core = start(message.urls);
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
    say({ kind: "answer", ticket, text: (await core).run(name, text) });
  } catch (error) {
    say({ kind: "broken", ticket, error: plainError(error) });
  }
}

async function describe(): Promise<void> {
  try {
    say({ kind: "described", text: (await core)?.describe() });
  } catch {
    say({ kind: "described", text: undefined });
  }
}
