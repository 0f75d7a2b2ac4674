/** Gives the app to somebody: put together as one file from what is kept here, with no network. */

import { gzipped } from "../engine/packed";
import { partUrls } from "../engine/parts";
import { saveOut } from "./files";
import { laterOf, ONE_FILE, oneFile, scriptOf, withLater } from "../offline/one_file";

/** A page that is the file already holds itself, as it was before anything was drawn on it. */
const ownPage = globalThis.ringwrightParts ? `<!doctype html>\n${document.documentElement.outerHTML}\n` : undefined;

/** The file's text. Throws where a part is neither kept nor to be had. */
export async function appAsOneFile(): Promise<string> {
  if (ownPage !== undefined) return ownPage;
  const page = await text("index.html");
  const first = await text(scriptOf(page));
  const [later, worker, icon, wasm, early, rest] = await Promise.all([
    text(laterOf(first, scriptOf(page))),
    text(partUrls.worker),
    text("icons/ring.svg"),
    packed(partUrls.wasm),
    packed(partUrls.first),
    packed(partUrls.rest),
  ]);
  return oneFile(page, withLater(first, later), { worker, wasm, first: early, rest }, icon);
}

/** Hands the file to the share sheet where there is one that takes files, else to the downloads. */
export async function handOn(): Promise<void> {
  const content = await appAsOneFile();
  const file = new File([content], ONE_FILE, { type: "text/html" });
  if (navigator.canShare?.({ files: [file] })) {
    try {
      await navigator.share({ files: [file], title: "Ringwright" });
      return;
    } catch (error) {
      // Closed without choosing is an answer; anything else falls back to a file.
      if (error instanceof DOMException && error.name === "AbortError") return;
    }
  }
  saveOut(ONE_FILE, content, "text/html");
}

async function reply(url: string): Promise<Response> {
  const found = await fetch(new URL(url, document.baseURI));
  if (!found.ok) throw new Error(`${url} could not be read (${found.status})`);
  return found;
}

const text = async (url: string): Promise<string> => (await reply(url)).text();
const packed = async (url: string): Promise<string> => gzipped(new Uint8Array(await (await reply(url)).arrayBuffer()));
