/** Asks the engine. Per calculation the latest question wins: one is being worked, the newest waits,
 * whatever lay between is dropped, and a stale answer never reaches a screen. */

import type { CalculationName } from "./names";
import { engineParts, makeWorker } from "./parts";
import type { Answer, Problem } from "./answers";
import type { FromWorker, PlainError, ToWorker } from "./protocol";

export type Outcome =
  | { state: "answer"; answer: Answer }
  | { state: "problem"; problem: Problem }
  | { state: "broken"; error: PlainError };

type Listener = (outcome: Outcome) => void;

interface Waiting {
  /** Under which it waits: one place for each question of the sheet. */
  key: string;
  name: string;
  text: string;
  working: boolean;
  listener: Listener;
}

const IMAGE_AFTER_MS = 4_000;
let imageTimer: ReturnType<typeof setTimeout> | undefined;

/** Once a visit, when the hand has long rested, by an engine of its own that ends with it. */
function makeImageLater(): void {
  clearTimeout(imageTimer);
  imageTimer = setTimeout(() => {
    imageTimer = undefined;
    const maker = makeWorker();
    maker.addEventListener("message", () => maker.terminate());
    maker.addEventListener("error", () => maker.terminate());
    maker.postMessage({ kind: "make-image", parts: engineParts() } satisfies ToWorker);
  }, IMAGE_AFTER_MS);
}

let answered: () => void;
/** Once the engine has answered: this version works on this device. */
export const firstAnswer = new Promise<void>((resolve) => (answered = resolve));

function tellFirst(): void {
  if (!performance.getEntriesByName("first-answer").length) performance.mark("first-answer");
  answered();
}

class Lane {
  private worker: Worker | undefined;
  private waiting = new Map<string, Waiting>();
  private working: (Waiting & { ticket: number }) | undefined;
  private tickets = 0;
  private describing: ((text: string | undefined) => void) | undefined;

  /** Called each time there is nothing left to work. */
  whenIdle: () => void = () => undefined;

  get busy(): boolean {
    return this.working !== undefined || this.waiting.size > 0;
  }

  ask(question: Waiting): void {
    this.waiting.delete(question.key);
    this.waiting.set(question.key, question);
    this.next();
  }

  /** Forgets a question: its answer, if still to come, is dropped. */
  drop(key: string): void {
    this.waiting.delete(key);
    if (this.working?.key === key) this.working.listener = () => undefined;
  }

  describe(listener: (text: string | undefined) => void): void {
    this.start();
    this.describing = listener;
    this.post({ kind: "describe" });
  }

  start(): void {
    if (this.worker) return;
    const worker = makeWorker();
    worker.addEventListener("message", (event: MessageEvent<FromWorker>) => this.hear(event.data));
    worker.addEventListener("error", (event) => {
      this.fail({ type: "WorkerError", message: event.message || "the calculation engine did not start" });
    });
    this.worker = worker;
    this.post({ kind: "start", parts: engineParts() });
  }

  private post(message: ToWorker): void {
    this.worker!.postMessage(message);
  }

  private next(): void {
    if (this.working) return;
    const first = this.waiting.values().next().value;
    if (!first) {
      this.whenIdle();
      return;
    }
    this.start();
    this.waiting.delete(first.key);
    this.tickets += 1;
    this.working = { ...first, ticket: this.tickets };
    const { name, text, working } = first;
    this.post({ kind: "work", ticket: this.tickets, name, text, working });
  }

  private hear(message: FromWorker): void {
    if (message.kind === "ready") {
      // Said where tests and the curious can see it.
      document.documentElement.dataset.engine = message.fromImage ? "image" : "files";
      if (!message.fromImage) makeImageLater();
      return;
    }
    if (message.kind === "image-made") return;
    if (message.kind === "failed") {
      this.fail(message.error);
      return;
    }
    if (message.kind === "described") {
      if (message.text !== undefined) tellFirst();
      this.describing?.(message.text);
      this.describing = undefined;
      return;
    }
    const asked = this.working;
    if (!asked || asked.ticket !== message.ticket) return;
    this.working = undefined;
    if (message.kind !== "broken") tellFirst();
    // A newer question on the same calculation makes this answer stale.
    if (!this.waiting.has(asked.key)) {
      asked.listener(
        message.kind === "broken" ? { state: "broken", error: message.error } : readAnswer(message.text),
      );
    }
    this.next();
  }

  /** The worker is lost: everybody who waits is told, and the next question starts a fresh one. */
  private fail(error: PlainError): void {
    this.worker?.terminate();
    this.worker = undefined;
    const told = [...this.waiting.values(), ...(this.working ? [this.working] : [])];
    this.waiting.clear();
    this.working = undefined;
    this.describing?.(undefined);
    this.describing = undefined;
    for (const each of told) each.listener({ state: "broken", error });
  }
}

/** What the core writes in plain letters, as it is printed: "116 C (241 F)", "0.05 N/mm2". */
function printed(text: string): string {
  return text.replace(/ C \(([\d. ]+) F\)/g, " °C ($1 °F)").replaceAll("N/mm2", "N/mm²");
}

function readAnswer(text: string): Outcome {
  try {
    const reply = JSON.parse(printed(text)) as { answer?: Answer; problem?: Problem };
    if (reply.answer) return { state: "answer", answer: reply.answer };
    if (reply.problem) return { state: "problem", problem: reply.problem };
  } catch {
    // Falls through: text that is no JSON is as good as no answer.
  }
  return { state: "broken", error: { type: "AnswerError", message: "the engine's answer could not be read" } };
}

const quick = new Lane();
const slow = new Lane();

/** Calculations that may take long enough to hold up a keystroke have a worker of their own. */
const SLOW = new Set(["wall-pressure", "bore-survey", "spread", "inspection", "job", "running", "piston-valve", "drawing"]);
const laneOf = new Map<string, Lane>();

/** Slow questions that wait until the quick ones are answered: on a phone's few cores a second engine that
 * starts at the same moment would hold up the first figures. */
const held = new Map<string, () => void>();

quick.whenIdle = () => {
  const now = [...held.values()];
  held.clear();
  for (const each of now) each();
};

/** working: with the numbers put into each formula. They are half of an answer's text, and no screen shows them before
 * a figure is opened (see sheet/opened.ts). */
export function ask(key: string, name: string, request: unknown, listener: Listener, working = false): void {
  const question = { key, name, text: JSON.stringify(request), working, listener };
  const lane = SLOW.has(name) ? slow : quick;
  if (imageTimer !== undefined) makeImageLater();
  laneOf.set(key, lane);
  if (lane === slow && quick.busy) held.set(key, () => slow.ask(question));
  else lane.ask(question);
}

export function drop(key: string): void {
  held.delete(key);
  laneOf.get(key)?.drop(key);
}

/** The words of every input, as JSON text; undefined when the engine could not give them. */
export function describeAll(listener: (text: string | undefined) => void): void {
  quick.describe(listener);
}

/** Begins to load the engine before the first question is ready. */
export function warmUp(): void {
  quick.start();
}

/** One question outside the sheet, such as the list of materials. */
export function askOnce(name: CalculationName, request: unknown = {}): Promise<Answer> {
  return new Promise((resolve, reject) => {
    ask(name, name, request, (outcome) => {
      if (outcome.state === "answer") resolve(outcome.answer);
      else if (outcome.state === "problem") reject(new Error(outcome.problem.message ?? outcome.problem.code));
      else reject(new Error(outcome.error.message));
    });
  });
}
