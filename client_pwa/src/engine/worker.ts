/** The engine at work: MicroPython with the calculation core. One instance a worker. */

import { FIRST_CALCULATIONS } from "./first";
import { bareEngine, bytesOf, functionsOf, importCore, writeFiles } from "./fresh";
import type { Engine, Functions } from "./fresh";
import { restoreImage } from "./image";
import { forgetImages, makeImage, storedImage } from "./image_store";
import { plainError } from "./protocol";
import type { FromWorker, Parts, ToWorker } from "./protocol";

interface Core extends Functions {
  /** Brings what of the core is not there yet, once. */
  whole(): Promise<void>;
  fromImage: boolean;
}

/** So long after an answer the hand rests, and nobody waits for what is given back. */
const REST_MS = 400;

let core: Promise<Core> | undefined;
let resting: ReturnType<typeof setTimeout> | undefined;
let given: Parts | undefined;

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
  return fromFiles(parts, image ? await bareEngine(parts) : bare);
}

async function fromFiles(parts: Parts, engine: Engine): Promise<Core> {
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

/** The engine itself broke, not what it worked: it is given up with its image for one made anew. */
async function startAgain(parts: Parts): Promise<Core> {
  await forgetImages().catch(() => undefined);
  return fromFiles(parts, await bareEngine(parts));
}

function coreOf(engine: Engine, fromImage: boolean, whole: () => Promise<void>): Core {
  return { ...functionsOf(engine), whole, fromImage };
}

const isFirst = (name: string): boolean => (FIRST_CALCULATIONS as readonly string[]).includes(name);

addEventListener("message", (event: MessageEvent<ToWorker>) => {
  const message = event.data;
  switch (message.kind) {
    case "start":
      given = message.parts;
      core = start(given);
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
      void answer(message);
  }
});

type Question = ToWorker & { kind: "work" };

async function answer(question: Question): Promise<void> {
  const { ticket } = question;
  try {
    say({ kind: "answer", ticket, text: await worked(question) });
    // The rest comes when the first figures stand.
    void core?.then(({ whole }) => whole()).catch(() => undefined);
  } catch (error) {
    say({ kind: "broken", ticket, error: plainError(error) });
  }
  clearTimeout(resting);
  resting = setTimeout(() => void core?.then(({ collect }) => collect()).catch(() => undefined), REST_MS);
}

/** Only text crosses the border: whole numbers beyond 32 bits would be cut. */
async function worked(question: Question, again = true): Promise<string> {
  const { name, text, working } = question;
  if (!core || !given) throw new Error("asked before it was started");
  const { run, whole } = await core;
  if (!isFirst(name)) await whole();
  try {
    return run(name, text, working);
  } catch (error) {
    if (!again || !(error instanceof WebAssembly.RuntimeError)) throw error;
    core = startAgain(given);
    return worked(question, false);
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
