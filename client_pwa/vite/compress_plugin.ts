/** Lays a .gz and a .br beside every built file that gains by it, for the service to send as they are, and
 * fails the build when what a first visit downloads, gzipped, passes the budget. */

import { gzipAsync } from "@gfx/zopfli";
import { readFileSync, readdirSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { brotliCompressSync, constants } from "node:zlib";
import type { Plugin } from "vite";

export const BUDGET_BYTES = 450_000;
const PACKED = /\.(gz|br)$/;
// Pictures are packed already.
const NOT_WORTH_IT = /\.png$/;
const ROUNDS = 5;
// Twice what the packer takes of itself: the engine, of code and of tables, falls into that many parts.
const PARTS = 30;

/** Every file of the output is fetched on a first visit: the page asks for some, the service worker for all. */
export function downloadedFiles(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" }).filter(
    (name) => !PACKED.test(name) && statSync(join(folder, name)).isFile(),
  );
}

async function pack(folder: string, name: string): Promise<number> {
  const data = readFileSync(join(folder, name));
  if (NOT_WORTH_IT.test(name)) return data.length;
  const gzipped = await gzipAsync(data, { numiterations: ROUNDS, blocksplittingmax: PARTS });
  const brotli = brotliCompressSync(data, { params: { [constants.BROTLI_PARAM_SIZE_HINT]: data.length } });
  if (gzipped.length < data.length) writeFileSync(join(folder, name + ".gz"), gzipped);
  if (brotli.length < data.length) writeFileSync(join(folder, name + ".br"), brotli);
  return Math.min(gzipped.length, data.length);
}

export function compressPlugin(folder: string): Plugin {
  return {
    name: "ringwright-compress",
    apply: "build",
    enforce: "post",
    closeBundle: {
      sequential: true,
      order: "post",
      async handler() {
        let total = 0;
        const lines: string[] = [];
        for (const name of downloadedFiles(folder)) {
          const bytes = await pack(folder, name);
          total += bytes;
          lines.push(`${String(bytes).padStart(9)}  ${name}`);
        }
        const sum = `${total} bytes gzipped of ${BUDGET_BYTES} allowed for a first visit`;
        if (total > BUDGET_BYTES) this.error(`${lines.join("\n")}\n${sum}: over the budget`);
        console.log(`${lines.join("\n")}\n${sum}`);
      },
    },
  };
}
