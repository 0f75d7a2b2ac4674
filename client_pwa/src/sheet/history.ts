/** What the open job was before each change, so that every entry and deletion can be taken back. It belongs to
 * the page: a job opened anew begins with none. */

import { computed, signal } from "@preact/signals";
import type { Job } from "../book/job";

/** More steps back than anybody remembers. */
const MOST = 300;

interface Step {
  before: Job;
  /** What was changed: names of inputs, or parts of the job. */
  names: readonly string[];
}

const past = signal<readonly Step[]>([]);
const future = signal<readonly Step[]>([]);
/** The entry in hand: all that is typed in it until it is left is one step. */
let stroke: object | undefined;
let lastStroke: object | undefined;

/** The change made last, one and the same for all that is typed in an entry. */
export const lastStep = computed<object | undefined>(() => past.value.at(-1));
export const canUndo = computed(() => past.value.length > 0);
export const canRedo = computed(() => future.value.length > 0);

export function begin(): void {
  past.value = [];
  future.value = [];
  lastStroke = undefined;
}

if (typeof document !== "undefined") {
  document.addEventListener("focusin", ({ target }) => (stroke = isTypedIn(target) ? {} : undefined));
  document.addEventListener("focusout", () => (stroke = undefined));
}

export function isTypedIn(target: EventTarget | null): boolean {
  return target instanceof HTMLTextAreaElement || (target instanceof HTMLInputElement && target.type === "text");
}

export function remember(before: Job, edit: Partial<Job>): void {
  const names = changed(before, edit);
  if (names.length === 0) return;
  future.value = [];
  if (stroke !== undefined && stroke === lastStroke) return;
  lastStroke = stroke;
  past.value = [...past.peek().slice(1 - MOST), { before, names }];
}

/** The job as it was before the last change, and what that changed; undefined when there is none. */
export function stepBack(now: Job): Step | undefined {
  const step = past.peek().at(-1);
  if (!step) return undefined;
  lastStroke = undefined;
  past.value = past.peek().slice(0, -1);
  future.value = [...future.peek(), { before: now, names: step.names }];
  return step;
}

export function stepForward(now: Job): Step | undefined {
  const step = future.peek().at(-1);
  if (!step) return undefined;
  lastStroke = undefined;
  future.value = future.peek().slice(0, -1);
  past.value = [...past.peek(), { before: now, names: step.names }];
  return step;
}

function changed(before: Job, edit: Partial<Job>): string[] {
  const { inputs } = edit;
  if (!inputs) return Object.keys(edit);
  return [...new Set([...Object.keys(before.inputs), ...Object.keys(inputs)])].filter((name) => before.inputs[name] !== inputs[name]);
}
