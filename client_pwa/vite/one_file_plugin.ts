/** Lays the app as one file beside the others: for a phone that is handed it by cable or share sheet. */

import { readFileSync, readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import type { Plugin } from "vite";
import { laterOf, ONE_FILE, oneFile, scriptOf, withLater } from "../src/offline/one_file.ts";

export function oneFilePlugin(folder: string): Plugin {
  return {
    name: "ringwright-one-file",
    apply: "build",
    enforce: "post",
    closeBundle: {
      sequential: true,
      order: "post",
      handler() {
        const assets = readdirSync(join(folder, "assets"));
        const scripts = assets.filter((name) => /^(?!worker-).*\.js$/.test(name));
        if (scripts.length !== 2) this.error(`the page must be one script and one with its later screens, and is ${scripts.join(", ")}`);
        const named = (start: string): Buffer => {
          const found = assets.filter((name) => name.startsWith(start) && !/\.(gz|br)$/.test(name));
          if (found.length !== 1) this.error(`one file ${start}… is wanted, and there are ${found.length}`);
          return readFileSync(join(folder, "assets", found[0]!));
        };
        const packed = (start: string): string => gzipSync(named(start), { level: 9 }).toString("base64");
        const page = readFileSync(join(folder, "index.html"), "utf8");
        const first = readFileSync(join(folder, scriptOf(page)), "utf8");
        const script = withLater(first, readFileSync(join(folder, laterOf(first, scriptOf(page))), "utf8"));
        const parts = {
          worker: named("worker-").toString("utf8"),
          wasm: packed("micropython-"),
          first: packed("core-first-"),
          rest: packed("core-rest-"),
        };
        const icon = readFileSync(join(folder, "icons", "ring.svg"), "utf8");
        writeFileSync(join(folder, ONE_FILE), oneFile(page, script, parts, icon));
      },
    },
  };
}
