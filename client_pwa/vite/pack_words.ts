/** Writes what src/engine/words.ts reads. */

import { codeOf, isPlain, MOST_WORDS } from "../src/engine/words.ts";

const WORD = /[A-Za-z]{3,}/g;
const FEWEST = 4;
const WORDS = 1200;

export function packWords(text: string): Uint8Array {
  const counts = new Map<string, number>();
  for (const [word] of text.matchAll(WORD)) counts.set(word, (counts.get(word) ?? 0) + 1);
  // What a word saves, less its place in the list; the most frequent get the shortest codes.
  const saves = ([word, count]: [string, number]): number => count * (word.length - 1.5) - word.length;
  const chosen = [...counts]
    .filter(([, count]) => count >= FEWEST)
    .sort((one, other) => saves(other) - saves(one) || (one[0] < other[0] ? -1 : 1))
    .slice(0, Math.min(WORDS, MOST_WORDS))
    .sort((one, other) => other[1] - one[1] || (one[0] < other[0] ? -1 : 1))
    .map(([word]) => word);
  const codes = new Map(chosen.map((word, index) => [word, codeOf(index)]));
  const bytes: number[] = [...new TextEncoder().encode(chosen.join("\n")), 0];
  let at = 0;
  const plain = (part: string): void => {
    for (const character of part) {
      const byte = character.charCodeAt(0);
      if (isPlain(byte)) bytes.push(byte);
      else throw new Error(`the core holds a character that is not plain: ${JSON.stringify(character)}`);
    }
  };
  for (const match of text.matchAll(WORD)) {
    plain(text.slice(at, match.index));
    bytes.push(...(codes.get(match[0]) ?? [...match[0]].map((letter) => letter.charCodeAt(0))));
    at = match.index + match[0].length;
  }
  plain(text.slice(at));
  return Uint8Array.from(bytes);
}
