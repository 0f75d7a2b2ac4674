/** Where the engine's parts are: files beside the page, or within the page where the app is one file. */

import { first, rest } from "virtual:core-files";
import wasmUrl from "@micropython/micropython-webassembly-pyscript/micropython.wasm?url";
import workerUrl from "./worker.ts?worker&url";
import type { EmbeddedParts } from "../offline/one_file";
import type { Parts } from "./protocol";

declare global {
  var ringwrightParts: EmbeddedParts | undefined;
}

const here = (path: string): string => new URL(path, document.baseURI).href;

export const partUrls = { worker: here(workerUrl), wasm: here(wasmUrl), first: here(first), rest: here(rest) };

/** A worker of the engine, not yet started. */
export function makeWorker(): Worker {
  const embedded = globalThis.ringwrightParts;
  const url = embedded ? URL.createObjectURL(new Blob([embedded.worker], { type: "text/javascript" })) : partUrls.worker;
  return new Worker(url, { type: import.meta.env.DEV ? "module" : "classic", name: "engine" });
}

/** What a worker is told to start with. */
export function engineParts(): Parts {
  const embedded = globalThis.ringwrightParts;
  if (embedded) return { kind: "within", wasm: embedded.wasm, first: embedded.first, rest: embedded.rest };
  return { kind: "beside", wasm: partUrls.wasm, first: partUrls.first, rest: partUrls.rest };
}
