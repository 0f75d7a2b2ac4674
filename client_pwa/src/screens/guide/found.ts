/** Which entries of the guide hold the words that are looked for. */

export interface Entry {
  /** Its address within the guide. */
  topic: string;
  name: string;
  /** The title of the part that it stands in. */
  part: string;
  text: string;
}

/** Those that hold every word, at the beginning of one of theirs: first what is called just so, then those whose name
 * has them, then those whose text has. */
export function found(entries: readonly Entry[], wanted: string): Entry[] {
  const words = plain(wanted).split(" ").filter(Boolean);
  const has = (text: string): boolean => words.every((word) => plain(` ${text}`).includes(` ${word}`));
  const named = entries.filter(({ name }) => has(name));
  const just = named.filter(({ name }) => plain(name).trim() === words.join(" "));
  return [...just, ...named.filter((entry) => !just.includes(entry)), ...entries.filter((entry) => !named.includes(entry) && has(`${entry.name} ${entry.text}`))];
}

/** Without what a person leaves out when typing: capitals, hyphens and stops. */
function plain(text: string): string {
  return text.toLowerCase().replace(/[^\p{L}\d]+/gu, " ");
}
