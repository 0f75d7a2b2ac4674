/** Lays a .gz and a .br beside every built file that gains by it, for the service to send as they are, and
 * fails the build when a first visit passes its budget, counted as it is sent over https: brotli. */

import { gzipAsync } from "@gfx/zopfli";
import { readFileSync, readdirSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { promisify } from "node:util";
import { brotliCompress, constants } from "node:zlib";
import type { Plugin } from "vite";
import { ONE_FILE } from "../src/offline/one_file.ts";

/** Everything that a phone keeps. */
export const BUDGET_BYTES = 480_000;
/** What it takes until the first figures stand; the rest comes after them. */
export const FIRST_BUDGET_BYTES = 300_000;
const FIRST = /^(index\.html|assets\/(index-|worker-|micropython-|core-first-).*)$/;
const PACKED = /\.(gz|br)$/;
// Pictures are packed already.
const NOT_WORTH_IT = /\.png$/;
const ROUNDS = 5;
/** How blocks and distances are coded: which comes out smallest, program, text or tables, only trying tells (0.4 kB of all). The packer's own choice
 * never does. */
const SHAPES = [
  [16, 0, 0],
  [17, 1, 4],
  [19, 1, 4],
].map(([block, postfix, direct]) => ({
  [constants.BROTLI_PARAM_LGBLOCK]: block!,
  [constants.BROTLI_PARAM_NPOSTFIX]: postfix!,
  [constants.BROTLI_PARAM_NDIRECT]: direct!,
}));
const brotliOf = promisify(brotliCompress);
// Twice what the packer takes of itself: the engine, of code and of tables, falls into that many parts.
const PARTS = 30;

/** Every file that a phone keeps: the page asks for some, the service worker for all. */
export function downloadedFiles(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .map((name) => name.replaceAll("\\", "/"))
    .filter((name) => !PACKED.test(name) && name !== ONE_FILE && statSync(join(folder, name)).isFile());
}

/** How many bytes of a file are sent. */
async function pack(folder: string, name: string): Promise<number> {
  const data = readFileSync(join(folder, name));
  if (NOT_WORTH_IT.test(name)) return data.length;
  const tried = await Promise.all(SHAPES.map((shape) => brotliOf(data, { params: { [constants.BROTLI_PARAM_SIZE_HINT]: data.length, ...shape } })));
  const brotli = tried.reduce((least, each) => (each.length < least.length ? each : least));
  const gzipped = await gzipAsync(data, { numiterations: ROUNDS, blocksplittingmax: PARTS });
  if (gzipped.length < data.length) writeFileSync(join(folder, name + ".gz"), gzipped);
  if (brotli.length < data.length) writeFileSync(join(folder, name + ".br"), brotli);
  return Math.min(brotli.length, data.length);
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
        let first = 0;
        const lines: string[] = [];
        for (const name of downloadedFiles(folder)) {
          const bytes = await pack(folder, name);
          total += bytes;
          if (FIRST.test(name)) first += bytes;
          lines.push(`${String(bytes).padStart(9)}  ${name}`);
        }
        const sums =
          `${first} bytes in brotli of ${FIRST_BUDGET_BYTES} allowed until the first figures, ` +
          `${total} of ${BUDGET_BYTES} for all that a phone keeps`;
        if (total > BUDGET_BYTES || first > FIRST_BUDGET_BYTES) this.error(`${lines.join("\n")}\n${sums}: over the budget`);
        console.log(`${lines.join("\n")}\n${sums}`);
      },
    },
  };
}
