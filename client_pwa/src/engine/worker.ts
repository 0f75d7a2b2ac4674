/** The engine: MicroPython with the calculation core in its file system. One instance a worker. */

import { loadMicroPython } from "@micropython/micropython-webassembly-pyscript";
import { plainError } from "./protocol";
import type { CoreUrls, FromWorker, ToWorker } from "./protocol";

// Enough that a whole job is worked without the heap having to grow.
const HEAP_BYTES = 8 * 1024 * 1024;
const PYTHON_STACK = 16 * 1024;

type RunJson = (name: string, text: string) => string;

let run: Promise<RunJson> | undefined;

function say(message: FromWorker): void {
  postMessage(message);
}

async function start(urls: CoreUrls): Promise<RunJson> {
  const coreText = fetch(urls.files).then((reply) => {
    if (!reply.ok) throw new Error(`the calculation files could not be read (${reply.status})`);
    return reply.text();
  });
  const python = await loadMicroPython({ url: urls.wasm, heapsize: HEAP_BYTES, pystack: PYTHON_STACK });
  // Path, line end, source; one after another with a nought between.
  for (const file of (await coreText).split("\0")) {
    const end = file.indexOf("\n");
    const path = "/lib/" + file.slice(0, end);
    python.FS.mkdirTree(path.slice(0, path.lastIndexOf("/")));
    python.FS.writeFile(path, file.slice(end + 1));
  }
  python.runPython("from ringwright.core.calculations import run_json");
  return python.globals.get("run_json") as RunJson;
}

addEventListener("message", (event: MessageEvent<ToWorker>) => {
  const message = event.data;
  if (message.kind === "start") {
    run = start(message.urls);
    run.then(
      () => say({ kind: "ready" }),
      (error: unknown) => say({ kind: "failed", error: plainError(error) }),
    );
    return;
  }
  void answer(message.ticket, message.name, message.text);
});

async function answer(ticket: number, name: string, text: string): Promise<void> {
  try {
    if (!run) throw new Error("asked before it was started");
    // Only text crosses the border: whole numbers beyond 32 bits would be cut.
    say({ kind: "answer", ticket, text: (await run)(name, text) });
  } catch (error) {
    say({ kind: "broken", ticket, error: plainError(error) });
  }
}
