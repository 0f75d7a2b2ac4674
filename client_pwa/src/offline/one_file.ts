/** The whole app as one file: the page with its script, the engine's worker, the engine and the core in it. The
 * build makes it for the service to offer, and the app itself for whoever it is handed on to. */

/** The parts of the engine as they stand in the file, each as text: the worker's source, the others gzipped in base64. */
export interface EmbeddedParts {
  worker: string;
  wasm: string;
  first: string;
  rest: string;
}

export const ONE_FILE = "ringwright.html";
const SCRIPT = /<script type="module"[^>]* src="([^"]+)"[^>]*><\/script>/;
const BESIDE = /\s*<link rel="(?:manifest|icon|apple-touch-icon)"[^>]*>/g;

/** The path of the page's script. page: the built index.html. */
export function scriptOf(page: string): string {
  const found = SCRIPT.exec(page);
  if (!found?.[1]) throw new Error("the page names no script");
  return found[1];
}

export function oneFile(page: string, script: string, parts: EmbeddedParts, icon: string): string {
  // "</script" and "<!--" end or hide a script within a page; in a string of the script they mean the same so written.
  const within = (text: string): string => text.replace(/<\/(script)/gi, "<\\/$1").replace(/<!--/g, "<\\!--");
  const told = `<script>globalThis.ringwrightParts=${within(JSON.stringify(parts))}</script>`;
  return page
    .replace(BESIDE, "")
    .replace("</head>", () => `<link rel="icon" type="image/svg+xml" href="data:image/svg+xml,${encodeURIComponent(icon)}"></head>`)
    .replace(SCRIPT, "")
    .replace("</body>", () => `${told}<script type="module">${within(script)}</script></body>`);
}
