/** Leaves out of the engine's loader what only Node needs, so that no phone downloads it. */

import type { Plugin } from "vite";

const LOADER = /micropython-webassembly-pyscript\/micropython\.mjs$/;
const DECLARED = /ENVIRONMENT_IS_NODE=globalThis\.process\?\.versions\?\.node&&"renderer"!=globalThis\.process\?\.type/;
// The end of the loader runs a file named on Node's command line.
const COMMAND_LINE = /("object"==typeof process&&"object"==typeof process\.versions)/;

// What the loader says of an engine that lacks a part: it is the one that came with it. And of browsers that are older
// than anything the app runs in.
const PARTS_THERE = /assert\(void 0!==wasmExports\.\w+,"missing Wasm export: \w+"\),/g;
const OLD_BROWSERS = /!function\(\)\{function humanReadableVersionToPacked[\s\S]*?\}\(\);/;

export function enginePlugin(): Plugin {
  return {
    name: "ringwright-engine",
    apply: "build",
    transform(code, id) {
      if (!LOADER.test(id)) return null;
      if (!DECLARED.test(code)) this.error("the engine's loader has changed: look again at what of it is Node's");
      const browser = code.replace(DECLARED, "ENVIRONMENT_IS_BROWSER=true");
      const plain = browser.replace(/\bENVIRONMENT_IS_NODE\b/g, "false").replace(COMMAND_LINE, "false&&$1").replace(PARTS_THERE, "").replace(OLD_BROWSERS, "");
      return { code: plain, map: null };
    },
  };
}
