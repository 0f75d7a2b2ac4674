/** The engine at work: MicroPython with the calculation core. One instance a worker. */

import { FIRST_CALCULATIONS } from "./first";
import { bareEngine, bytesOf, importCore, writeFiles } from "./fresh";
import type { Engine } from "./fresh";
import { restoreImage } from "./image";
import { forgetImages, makeImage, storedImage } from "./image_store";
import { plainError } from "./protocol";
import type { FromWorker, Parts, ToWorker } from "./protocol";

interface Core {
  run(name: string, text: string): string;
  describe(): string;
  /** Brings what of the core is not there yet, once. */
  whole(): Promise<void>;
  fromImage: boolean;
}

let core: Promise<Core> | undefined;

function say(message: FromWorker): void {
  postMessage(message);
}

async function start(parts: Parts): Promise<Core> {
  // Both at once: most starts have an image, and each needs an engine.
  const [bare, image] = await Promise.all([bareEngine(parts), storedImage(parts)]);
  if (image) {
    try {
      restoreImage(bare, image);
      return coreOf(bare, true, () => Promise.resolve());
    } catch {
      // Whatever is wrong with it, it is not used again, nor the engine that it was put into.
      await forgetImages().catch(() => undefined);
    }
  }
  const engine = image ? await bareEngine(parts) : bare;
  writeFiles(engine, await bytesOf(parts, "first"));
  importCore(engine);
  let rest: Promise<void> | undefined;
  return coreOf(engine, false, () => {
    rest ??= bytesOf(parts, "rest").then((files) => writeFiles(engine, files));
    // What could not be fetched is asked for again at the next question.
    rest.catch(() => (rest = undefined));
    return rest;
  });
}

function coreOf({ python }: Engine, fromImage: boolean, whole: () => Promise<void>): Core {
  return {
    run: python.globals.get("run_json") as Core["run"],
    describe: python.globals.get("describe") as Core["describe"],
    whole,
    fromImage,
  };
}

const isFirst = (name: string): boolean => (FIRST_CALCULATIONS as readonly string[]).includes(name);

addEventListener("message", (event: MessageEvent<ToWorker>) => {
  const message = event.data;
  switch (message.kind) {
    case "start":
      core = start(message.parts);
      core.then(
        ({ fromImage }) => say({ kind: "ready", fromImage }),
        (error: unknown) => say({ kind: "failed", error: plainError(error) }),
      );
      return;
    case "make-image":
      // Without one the app only starts more slowly: a full disk is no reason to trouble anybody.
      void makeImage(message.parts)
        .catch(() => undefined)
        .then(() => say({ kind: "image-made" }));
      return;
    case "describe":
      void describe();
      return;
    case "work":
      void answer(message.ticket, message.name, message.text);
  }
});

async function answer(ticket: number, name: string, text: string): Promise<void> {
  try {
    if (!core) throw new Error("asked before it was started");
    const { run, whole } = await core;
    if (!isFirst(name)) await whole();
    // Only text crosses the border: whole numbers beyond 32 bits would be cut.
    say({ kind: "answer", ticket, text: run(name, text) });
    // The rest comes when the first figures stand.
    void whole().catch(() => undefined);
  } catch (error) {
    say({ kind: "broken", ticket, error: plainError(error) });
  }
}

async function describe(): Promise<void> {
  try {
    const engine = await core;
    await engine?.whole();
    say({ kind: "described", text: engine?.describe() });
  } catch {
    say({ kind: "described", text: undefined });
  }
}
