/** What is restored from an image answers letter for letter as what was read from the files. */

import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { loadMicroPython } from "@micropython/micropython-webassembly-pyscript";
import { expect, test } from "vitest";
import { coreFiles } from "../../vite/core_plugin.ts";
import { packWords } from "../../vite/pack_words.ts";
import { importCore, watchForMemory, writeFiles } from "./fresh";
import type { Engine } from "./fresh";
import { restoreImage, takeImage } from "./image";

const core = fileURLToPath(new URL("../../../service/ringwright/core", import.meta.url));
const vectors = fileURLToPath(new URL("../../../tests/vectors/requests.json", import.meta.url));

type Run = (name: string, text: string) => string;

async function bare(): Promise<Engine> {
  const found = watchForMemory();
  try {
    const python = await loadMicroPython({ heapsize: 8 * 1024 * 1024, pystack: 16 * 1024 });
    return { python, memory: found.memory! };
  } finally {
    found.stop();
  }
}

function filled(engine: Engine): Engine {
  const files = Object.entries(coreFiles(core)).map(([path, source]) => `#${path}\n${source}`);
  writeFiles(engine, packWords(files.join("")));
  importCore(engine);
  return engine;
}

test("an engine restored from its image answers letter for letter", { timeout: 120_000 }, async () => {
  const image = takeImage(filled(await bare()));
  expect(image.content.length).toBeLessThan(6_000_000);
  const restored = await bare();
  restoreImage(restored, image);
  const read = filled(await bare());
  const ask = (engine: Engine): Run => engine.python.globals.get("run_json") as Run;
  const requests = JSON.parse(readFileSync(vectors, "utf8")) as { calculation: string; request: unknown }[];
  expect(requests.length).toBeGreaterThan(30);
  const [fromImage, fromFiles] = [ask(restored), ask(read)];
  for (let round = 0; round < 2; round += 1) {
    for (const { calculation, request } of requests) {
      const text = JSON.stringify(request);
      expect(fromImage(calculation, text)).toBe(fromFiles(calculation, text));
    }
  }
  // It goes on as a fresh one does: errors, and hundreds of answers more.
  expect(fromImage("sizing", "{}")).toContain("required");
  for (let bore = 20; bore < 320; bore += 1) expect(fromImage("sizing", `{"bore": ${bore}}`)).toContain("free_gap");
});

test("a damaged image is refused", { timeout: 60_000 }, async () => {
  const image = takeImage(filled(await bare()));
  await expect(bare().then((engine) => restoreImage(engine, { ...image, answer: image.answer + " " }))).rejects.toThrow();
  const shorter = { ...image, content: image.content.subarray(4096) };
  await expect(bare().then((engine) => restoreImage(engine, shorter))).rejects.toThrow("damaged");
  const content = image.content.slice();
  content[content.length - 5]! ^= 1;
  await expect(bare().then((engine) => restoreImage(engine, { ...image, content }))).rejects.toThrow("damaged");
});
