/** One step back, one step forward, said in words; by the button in the head or by the usual keys. */

import { said } from "../base/said";
import { labelOf } from "../engine/labels";
import { canRedo, isTypedIn, stepBack, stepForward } from "./history";
import { job, putBack } from "./sheet";

const PARTS: Readonly<Record<string, string>> = { name: "name", notes: "notes", done: "ticks", measured: "measured sizes" };

export function undo(): void {
  const step = stepBack(job.peek());
  if (!step) return;
  putBack(step.before);
  said.value = { text: `Taken back: ${wordsOf(step.names)}.`, action: { label: "Redo", run: redo } };
}

export function redo(): void {
  const step = stepForward(job.peek());
  if (!step) return;
  putBack(step.before);
  said.value = { text: `Done again: ${wordsOf(step.names)}.`, ...(canRedo.peek() ? { action: { label: "Redo", run: redo } } : {}) };
}

/** After a deletion: says what is gone, with the way back beside it. */
export function sayGone(what: string): void {
  said.value = { text: `${what} is taken out.`, action: { label: "Undo", run: undo } };
}

function wordsOf(names: readonly string[]): string {
  const words = names.map((name) => PARTS[name] ?? labelOf(name).toLowerCase());
  return words.length > 3 ? `${words.slice(0, 3).join(", ")} and more` : words.join(", ");
}

addEventListener("keydown", (event) => {
  if (!(event.ctrlKey || event.metaKey) || event.altKey || event.key.toLowerCase() !== "z") return;
  // Within an entry the browser takes back letters; a step of the job is taken back from outside of it.
  if (isTypedIn(event.target)) return;
  event.preventDefault();
  if (event.shiftKey) redo();
  else undo();
});
