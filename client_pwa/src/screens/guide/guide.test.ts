import { expect, test } from "vitest";
import type { Operation } from "../../engine/answers";
import { merged } from "./merged";
import { topicOfWord, WORDS } from "./texts";

const card = (...keys: string[]): Operation[] => keys.map((key) => ({ key }) as Operation);

test("operations stand once each, in the order of the work, with the first ring that has them", () => {
  const found = merged([card("survey", "bore", "slit", "fit"), card("survey", "drill", "bore", "saw", "fit")]);
  expect(found.map((each) => each.operation.key)).toEqual(["survey", "drill", "bore", "saw", "slit", "fit"]);
  expect(found.map((each) => each.ring)).toEqual([0, 1, 0, 1, 0, 0]);
});

test("each word of the trade has an address of its own, and a sentence that ends", () => {
  const words = Object.entries(WORDS);
  expect(new Set(words.map(([word]) => topicOfWord(word))).size).toBe(words.length);
  for (const [word, meaning] of words) {
    expect(topicOfWord(word)).toMatch(/^[a-z\d_-]{1,64}$/);
    expect(meaning).toMatch(/^[A-Z].*\.$/);
  }
});
