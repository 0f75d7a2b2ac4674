/** A fresh engine: MicroPython, its memory within reach, and the core's files as far as they are wanted. */

import { loadMicroPython } from "@micropython/micropython-webassembly-pyscript";
import type { MicroPython } from "@micropython/micropython-webassembly-pyscript";
import { ungzipped } from "./packed";
import { unpackWords } from "./words";
import type { Parts } from "./protocol";

// Enough that a whole job is worked without the heap having to grow.
const HEAP_BYTES = 8 * 1024 * 1024;
const PYTHON_STACK = 16 * 1024;

export interface Engine {
  python: MicroPython;
  memory: WebAssembly.Memory;
}

export async function bytesOf(parts: Parts, which: "wasm" | "first" | "rest"): Promise<Uint8Array<ArrayBuffer>> {
  if (parts.kind === "within") return ungzipped(parts[which]);
  const reply = await fetch(parts[which]);
  if (!reply.ok) throw new Error(`the calculation files could not be read (${reply.status})`);
  return new Uint8Array(await reply.arrayBuffer());
}

/** The engine without any of the core's files. */
export async function bareEngine(parts: Parts): Promise<Engine> {
  const wasm = parts.kind === "within" ? URL.createObjectURL(new Blob([await bytesOf(parts, "wasm")], { type: "application/wasm" })) : parts.wasm;
  const found = watchForMemory();
  try {
    const python = await loadMicroPython({ url: wasm, heapsize: HEAP_BYTES, pystack: PYTHON_STACK });
    if (!found.memory) throw new Error("the engine's memory was not found");
    return { python, memory: found.memory };
  } finally {
    found.stop();
  }
}

export function writeFiles({ python }: Engine, packed: Uint8Array): void {
  // Each file begins with a line "#path".
  for (const file of unpackWords(packed).slice(1).split("\n#")) {
    const end = file.indexOf("\n");
    const path = "/lib/" + file.slice(0, end);
    python.FS.mkdirTree(path.slice(0, path.lastIndexOf("/")));
    python.FS.writeFile(path, file.slice(end + 1) + "\n");
  }
}

/** What is called from outside. Nothing is handed out yet: an image is taken before that. */
export function importCore({ python }: Engine): void {
  python.runPython(
    "import json\n" +
      "from ringwright.core.calculations import CALCULATIONS, run_json\n" +
      "def describe():\n" +
      " from ringwright.core.describe import described\n" +
      " return json.dumps(described(CALCULATIONS))",
  );
}

/** The loader keeps the memory to itself; it is among what the instance exports. */
export function watchForMemory(): { memory: WebAssembly.Memory | undefined; stop: () => void } {
  const { instantiate, instantiateStreaming } = WebAssembly;
  const found: { memory: WebAssembly.Memory | undefined; stop: () => void } = {
    memory: undefined,
    stop: () => Object.assign(WebAssembly, { instantiate, instantiateStreaming }),
  };
  const watched =
    <Given extends unknown[]>(make: (...given: Given) => Promise<WebAssembly.WebAssemblyInstantiatedSource>) =>
    async (...given: Given): Promise<WebAssembly.WebAssemblyInstantiatedSource> => {
      const made = await make.apply(WebAssembly, given);
      found.memory = Object.values(made.instance.exports).find((each) => each instanceof WebAssembly.Memory);
      return made;
    };
  Object.assign(WebAssembly, {
    instantiate: watched(instantiate as (bytes: BufferSource, imports?: WebAssembly.Imports) => Promise<WebAssembly.WebAssemblyInstantiatedSource>),
    instantiateStreaming: watched(instantiateStreaming),
  });
  return found;
}
