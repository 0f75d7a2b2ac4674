/** What each input means and what is taken when it is not given: the core's words, asked for once. */

import { signal } from "@preact/signals";
import { describeAll } from "../engine/client";

interface Words {
  name: string;
  meaning: string;
  default?: string;
}

const words = signal<Record<string, { fields: Words[] }>>({});
let asked = false;

export function needWords(): void {
  if (asked) return;
  asked = true;
  describeAll((text) => {
    if (text === undefined) asked = false;
    else words.value = JSON.parse(text) as Record<string, { fields: Words[] }>;
  });
}

export function wordsOf(calculation: string, name: string): Words | undefined {
  return words.value[calculation]?.fields.find((field) => field.name === name);
}
