/** What is restored from an image answers letter for letter as what was read from the files. */

import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { expect, test } from "vitest";
import { coreFiles } from "../../vite/core_plugin.ts";
import { packWords } from "../../vite/pack_words.ts";
import { functionsOf, importCore, loaded, writeFiles } from "./fresh";
import type { Engine } from "./fresh";
import { restoreImage, takeImage } from "./image";

const core = fileURLToPath(new URL("../../../service/ringwright/core", import.meta.url));
const vectors = fileURLToPath(new URL("../../../tests/vectors/requests.json", import.meta.url));

type Run = (name: string, text: string) => string;

const bare = (): Promise<Engine> => loaded({});

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

test("what JavaScript drops frees nothing that is still wanted", { timeout: 60_000 }, async () => {
  setFlagsFromString("--expose-gc");
  const collect = runInNewContext("gc") as () => void;
  const drop = async (): Promise<void> => {
    // What is weakly held lives to the end of a task, and its loss is told in a task of its own.
    for (let turn = 0; turn < 3; turn += 1) {
      collect();
      await new Promise((resolve) => setTimeout(resolve, 10));
    }
  };
  const maker = await bare();
  await drop();
  const image = takeImage(filled(maker));
  for (let round = 0; round < 3; round += 1) {
    const engine = await bare();
    restoreImage(engine, image);
    const { run } = functionsOf(engine);
    for (let turn = 0; turn < 3; turn += 1) {
      await drop();
      expect(run("tooling", '{"bore": 80}')).toContain("former");
    }
  }
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

test("a long day of answers takes no more memory", { timeout: 60_000 }, async () => {
  const engine = filled(await bare());
  const { run, collect } = functionsOf(engine);
  const held = (): number => {
    engine.python.runPython("held = gc.mem_alloc()");
    return engine.python.globals.get("held") as number;
  };
  for (const name of ["sizing", "job"]) run(name, '{"bore": 80}');
  collect();
  const [first, memory] = [held(), engine.memory.buffer.byteLength];
  // Nobody rests: what is given back is given back by itself, in time.
  for (let turn = 0; turn < 60; turn += 1) for (const name of ["sizing", "job"]) run(name, `{"bore": ${80 + turn / 10}}`);
  expect(held() - first).toBeLessThan(6_000_000);
  expect(engine.memory.buffer.byteLength).toBe(memory);
  collect();
  expect(Math.abs(held() - first)).toBeLessThan(100_000);
});
