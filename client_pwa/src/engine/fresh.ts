/** A fresh engine: MicroPython, its memory within reach, and the core's files as far as they are wanted. */

import { loadMicroPython } from "@micropython/micropython-webassembly-pyscript";
import type { MicroPython } from "@micropython/micropython-webassembly-pyscript";
import { inBase64, ungzipped } from "./packed";
import { unpackWords } from "./words";
import type { Parts } from "./protocol";

// Enough that a whole job is worked without the heap having to grow.
const HEAP_BYTES = 8 * 1024 * 1024;
const PYTHON_STACK = 16 * 1024;
// Python looks for what nobody holds any more each time this much has been taken, and only then: looking takes as long
// as a sizing, which takes a fortieth of this. Half of the heap, for the core itself holds less than the other half.
const TAKEN_BYTES = HEAP_BYTES / 2;

/** The core's functions as the engine hands them out. */
export interface Functions {
  run(name: string, text: string, working?: boolean): string;
  describe(): string;
  /** Gives back what nobody holds any more: for a moment in which nobody waits. */
  collect(): void;
}

export interface Engine {
  python: MicroPython;
  memory: WebAssembly.Memory;
  /** Held as long as the engine, and never used. */
  held: readonly unknown[];
  functions?: Functions;
}

/** Handed out once and held as long as the engine: when JavaScript drops what it was handed, the engine frees the
 * function, even if it was handed out a second time meanwhile. */
export function functionsOf(engine: Engine): Functions {
  const { globals } = engine.python;
  engine.functions ??= { run: globals.get("run_json") as Functions["run"], describe: globals.get("describe") as Functions["describe"], collect: globals.get("collect") as Functions["collect"] };
  return engine.functions;
}

export async function bytesOf(parts: Parts, which: "wasm" | "first" | "rest"): Promise<Uint8Array<ArrayBuffer>> {
  if (parts.kind === "within") return ungzipped(parts[which]);
  const reply = await fetch(parts[which]);
  if (!reply.ok) throw new Error(`the calculation files could not be read (${reply.status})`);
  return new Uint8Array(await reply.arrayBuffer());
}

/** The engine without any of the core's files. */
export async function bareEngine(parts: Parts): Promise<Engine> {
  return loaded({ url: parts.kind === "within" ? `data:application/wasm;base64,${inBase64(await bytesOf(parts, "wasm"))}` : parts.wasm });
}

/** What the engine has handed out in this realm, by number: the loader keeps it there. */
const handedOut = globalThis as { proxy_js_map?: Map<number, WeakRef<object>> };

/** The engine as its loader gives it. */
export async function loaded(from: { url?: string }): Promise<Engine> {
  const found = watchForMemory();
  try {
    const python = await loadMicroPython({ ...from, heapsize: HEAP_BYTES, pystack: PYTHON_STACK });
    if (!found.memory) throw new Error("the engine's memory was not found");
    // The loader asks for a module and drops it. Freed at some later time, its number would be given to something
    // else by then: in an engine whose memory is an image of another's, to what the image handed out.
    const held = [...(handedOut.proxy_js_map?.values() ?? [])].map((each) => each.deref());
    return { python, memory: found.memory, held };
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
    "import gc, json\n" +
      `gc.threshold(${TAKEN_BYTES})\n` +
      "collect = gc.collect\n" +
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
