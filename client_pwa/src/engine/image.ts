/** An image of the engine's memory with the whole core read: reading Python is most of a start, and this
 * saves it. It is proved by a known answer whenever it is used. */

import { functionsOf } from "./fresh";
import type { Engine } from "./fresh";

const PAGE = 4096;
/** A question of the first screen: its answer must come letter for letter. */
const KNOWN = ["sizing", '{"bore": 79.375, "steam_pressure": 0.8}'] as const;

export interface Image {
  /** Of the whole memory [bytes]. */
  size: number;
  /** Numbers of the pages that hold anything, and those pages one after another. */
  pages: Uint32Array;
  content: Uint8Array;
  /** Of the pages and their numbers: an engine on a damaged memory might never come back. */
  sum: number;
  answer: string;
}

const known = (engine: Engine): string => functionsOf(engine).run(...KNOWN);

/** The image of an engine that has every file of the core and has handed nothing out yet. */
export function takeImage(engine: Engine): Image {
  const [name, request] = KNOWN.map((text) => JSON.stringify(text));
  engine.python.runPython(`CALCULATIONS.values()\ndescribe()\nrun_json(${name}, ${request})\nimport gc\ngc.collect()`);
  const memory = new Uint8Array(engine.memory.buffer);
  const words = new Uint32Array(engine.memory.buffer);
  const used: number[] = [];
  for (let page = 0; page < memory.length / PAGE; page += 1) {
    const end = ((page + 1) * PAGE) / 4;
    let word = (page * PAGE) / 4;
    while (word < end && words[word] === 0) word += 1;
    if (word < end) used.push(page);
  }
  const content = new Uint8Array(used.length * PAGE);
  used.forEach((page, index) => content.set(memory.subarray(page * PAGE, (page + 1) * PAGE), index * PAGE));
  const size = memory.length;
  const pages = Uint32Array.from(used);
  // From here on the engine may hand things out.
  return { size, pages, content, sum: sumOf(size, pages, content), answer: known(engine) };
}

/** Puts an image into a fresh engine of the same version. Throws at any doubt: that engine is spoilt then. */
export function restoreImage(engine: Engine, image: Image): void {
  const { python, memory } = engine;
  if (sumOf(image.size, image.pages, image.content) !== image.sum) throw new Error("the image is damaged");
  // The loader's own way to more memory keeps its views of it right.
  const short = image.size - memory.buffer.byteLength;
  if (short > 0) python._module._malloc(short);
  const bytes = new Uint8Array(memory.buffer);
  if (bytes.length < image.size) throw new Error("the image does not fit");
  bytes.fill(0);
  image.pages.forEach((page, index) => bytes.set(image.content.subarray(index * PAGE, (index + 1) * PAGE), page * PAGE));
  if (known(engine) !== image.answer) throw new Error("the image does not answer as it did");
}

/** FNV-1a over 32-bit words. */
function sumOf(size: number, pages: Uint32Array, content: Uint8Array): number {
  if (content.length !== pages.length * PAGE || content.byteOffset % 4 !== 0) return Number.NaN;
  let sum = 0x811c9dc5 ^ size;
  for (const word of pages) sum = Math.imul(sum ^ word, 0x01000193);
  for (const word of new Uint32Array(content.buffer, content.byteOffset, content.length / 4)) sum = Math.imul(sum ^ word, 0x01000193);
  return sum;
}
