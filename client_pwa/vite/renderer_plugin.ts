/** Lays the renderer of the specification where the service finds it for its page /docs: files of their own, beside the
 * app and no part of it, so that no phone keeps them. They are as their makers publish them, less the name of a source
 * map that is not served. */

import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";
import type { Plugin } from "vite";

/** From what name in the package to what name here. */
const FILES = {
  "swagger-ui-bundle.js": "swagger-ui-bundle.js",
  "swagger-ui.css": "swagger-ui.css",
  // What the licence asks to be handed on with it.
  LICENSE: "LICENSE.txt",
  NOTICE: "NOTICE.txt",
  "swagger-ui-bundle.js.LICENSE.txt": "swagger-ui-bundle.js.LICENSE.txt",
};
const here = dirname(fileURLToPath(import.meta.url));
const SOURCE_MAP = /\n?(\/\/|\/\*)# sourceMappingURL=.*\s*$/;

export function rendererPlugin(folder: string): Plugin {
  return {
    name: "ringwright-renderer",
    apply: "build",
    closeBundle: {
      sequential: true,
      handler() {
        const from = join(here, "../node_modules/swagger-ui-dist");
        if (!existsSync(from)) {
          this.warn("swagger-ui-dist is not installed (npm ci): the page /docs will list the calls without drawing them");
          return;
        }
        const texts = Object.entries(FILES).map(([name, to]) => ({
          to: join(folder, to),
          data: Buffer.from(readFileSync(join(from, name), "utf8").replace(SOURCE_MAP, "\n")),
        }));
        // Packing takes seconds, and they change with the package alone.
        if (texts.every(({ to, data }) => existsSync(to) && readFileSync(to).equals(data))) return;
        rmSync(folder, { recursive: true, force: true });
        mkdirSync(folder, { recursive: true });
        for (const { to, data } of texts) {
          writeFileSync(`${to}.br`, brotliCompressSync(data, { params: { [constants.BROTLI_PARAM_SIZE_HINT]: data.length } }));
          writeFileSync(`${to}.gz`, gzipSync(data, { level: 9 }));
          writeFileSync(to, data);
        }
      },
    },
  };
}
