/** What a measured ring taught, taken for the next one. */

import type { Inputs, Job } from "../book/job";
import { labelOf } from "../engine/labels";
import { fieldsOf } from "../engine/tables";

/** The job for the next ring: the relief that the heat gave is the one to reckon with, the card starts afresh, and
 * what was measured of the ring before stands in the notes. */
export function forNextRing(now: Job, relief: number, day: string): Partial<Job> {
  // To so many digits that the next former is the one the inspection names.
  const text = relief.toFixed(5);
  const measured = fieldsOf("inspection").filter(({ name }) => name.startsWith("measured_") && now.inputs[name] !== undefined);
  const words = measured.map(({ name }) => `${labelOf(name, "inspection").toLowerCase()} ${wordsOf(now.inputs[name])}`);
  const line = `${day}: ${words.join(", ")}. The heat relieved ${relief.toFixed(3)} of the stress, which is taken for the next ring.`;
  const inputs: Inputs = { ...now.inputs, relief: text };
  for (const { name } of measured) delete inputs[name];
  return { inputs, notes: now.notes ? `${now.notes}\n${line}` : line, done: [], measured: {} };
}

const wordsOf = (input: unknown): string => (typeof input === "string" ? input : Array.isArray(input) ? input.map(wordsOf).join(" and ") : "");
