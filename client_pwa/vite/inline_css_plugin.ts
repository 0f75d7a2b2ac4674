/** Puts the style sheet into the page itself: one journey less before the first thing is seen. The service
 * allows just this text by its hash, see static_app.py. */

import type { Plugin } from "vite";

const LINK = /\s*<link rel="stylesheet"[^>]*>/g;

export function inlineCssPlugin(): Plugin {
  return {
    name: "ringwright-inline-css",
    apply: "build",
    enforce: "post",
    generateBundle(_options, bundle) {
      const page = bundle["index.html"];
      const sheets = Object.values(bundle).filter((file) => file.type === "asset" && file.fileName.endsWith(".css"));
      // The page's files are written in a later round than the engine's worker.
      if (page?.type !== "asset" || sheets.length === 0) return;
      const text = sheets.map((sheet) => (sheet.type === "asset" ? String(sheet.source) : "")).join("");
      if (/url\(|<\//.test(text)) this.error("the style sheet holds what it could not hold in the page");
      page.source = String(page.source).replace(LINK, "").replace("</head>", () => `<style>${text.trim()}</style></head>`);
      for (const sheet of sheets) delete bundle[sheet.fileName];
    },
  };
}
