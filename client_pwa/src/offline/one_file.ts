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

const LATER = /import\((["'`])\.\/(later_screens-[\w-]+\.js)\1\)/;
const GIVES = /export\{([^}]*)\};?\s*$/;
const TAKES = /^import\{([^}]*)\}from(["'`])[^"'`]*\2;/;

/** The path of the script with the screens that come later. script: the page's; path: its own. */
export function laterOf(script: string, path: string): string {
  const found = LATER.exec(script);
  if (!found?.[2]) throw new Error("the page's script fetches no screens that come later");
  return path.slice(0, path.lastIndexOf("/") + 1) + found[2];
}

/** The page's script with the later screens in it: from a file on a disk no script may fetch another. What each hands
 * to the other by import and export it hands by a function instead. */
export function withLater(script: string, later: string): string {
  const [gives, takes, screens] = [GIVES.exec(script), TAKES.exec(later), GIVES.exec(later)];
  if (!gives?.[1] || !takes?.[1] || !screens?.[1]) throw new Error("the scripts of the page are not of the form that can be joined");
  // "a as b": what an export calls b is its own a; what an import takes as a it calls b.
  const pairs = (list: string): [string, string][] =>
    list.split(",").map((each) => {
      const [first = "", second = first] = each.trim().split(/\s+as\s+/);
      return [first, second];
    });
  const exported = (list: string): string => pairs(list).map(([own, name]) => `${name}:${own}`).join();
  const imported = pairs(takes[1]).map(([name, own]) => `${name}:${own}`).join();
  const body = later.slice(takes[0].length, screens.index);
  return (
    script.slice(0, gives.index).replace(LATER, "Promise.resolve(ringwrightLater(ringwrightGiven()))") +
    `const ringwrightGiven=()=>({${exported(gives[1])}});` +
    `function ringwrightLater({${imported}}){${body};return{${exported(screens[1])}}}`
  );
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
