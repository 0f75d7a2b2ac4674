import { dirname, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import { VitePWA } from "vite-plugin-pwa";
import { compressPlugin } from "./vite/compress_plugin.ts";
import { ONE_FILE } from "./src/offline/one_file.ts";
import { inlineCssPlugin } from "./vite/inline_css_plugin.ts";
import { enginePlugin } from "./vite/engine_plugin.ts";
import { corePlugin } from "./vite/core_plugin.ts";
import { oneFilePlugin } from "./vite/one_file_plugin.ts";
import { rendererPlugin } from "./vite/renderer_plugin.ts";
import { revisionsBySha256 } from "./vite/revisions.ts";

const here = dirname(fileURLToPath(import.meta.url));
const output = resolve(here, "../service/ringwright/app");
const core = resolve(here, "../service/ringwright/core");
const renderer = resolve(here, "../service/ringwright/renderer");

export default defineConfig(({ mode }) => ({
  base: "./",
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  plugins: [
    corePlugin(core),
    ...(mode === "test"
      ? []
      : [
          inlineCssPlugin(),
          VitePWA({
            strategies: "injectManifest",
            srcDir: "src/offline",
            filename: "service_worker.ts",
            injectRegister: null,
            manifest: false,
            injectManifest: {
              globPatterns: ["**/*.{html,js,css,wasm,bin,svg,png,webmanifest}"],
              globIgnores: [ONE_FILE],
              // Files with a hash in their name never change: the worker need not ask for them afresh.
              dontCacheBustURLsMatching: /assets\//,
              manifestTransforms: [revisionsBySha256(output)],
            },
          }),
          oneFilePlugin(output),
          compressPlugin(output),
          rendererPlugin(renderer),
        ]),
  ],
  // A classic script, which a file opened from disk may start from a blob; browsers start no module from one.
  worker: { format: "iife" as const, plugins: () => [corePlugin(core), enginePlugin()] },
  build: {
    outDir: output,
    emptyOutDir: true,
    target: "es2022",
    modulePreload: { polyfill: false },
    assetsInlineLimit: 0,
  },
  test: { include: ["src/**/*.test.ts", "vite/**/*.test.ts"], environment: "node" as const },
}));
