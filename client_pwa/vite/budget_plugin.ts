/** Fails the build when what a first visit downloads, gzipped, passes the budget. */

import { readFileSync, readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import type { Plugin } from "vite";

export const BUDGET_BYTES = 400_000;

/** Every file of the output is fetched on a first visit: the page asks for some, the service worker for all. */
export function gzippedTotal(folder: string): { total: number; parts: [string, number][] } {
  const parts: [string, number][] = readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => statSync(join(folder, name)).isFile())
    .map((name) => [name, gzipSync(readFileSync(join(folder, name)), { level: 9 }).length]);
  parts.sort((one, other) => other[1] - one[1]);
  return { total: parts.reduce((sum, part) => sum + part[1], 0), parts };
}

export function budgetPlugin(folder: string): Plugin {
  return {
    name: "ringwright-budget",
    apply: "build",
    enforce: "post",
    closeBundle: {
      sequential: true,
      order: "post",
      handler() {
        const { total, parts } = gzippedTotal(folder);
        const table = parts.map(([name, bytes]) => `${String(bytes).padStart(9)}  ${name}`).join("\n");
        const line = `${total} bytes gzipped of ${BUDGET_BYTES} allowed for a first visit`;
        if (total > BUDGET_BYTES) this.error(`${table}\n${line}: over the budget`);
        console.log(`${table}\n${line}`);
      },
    },
  };
}
