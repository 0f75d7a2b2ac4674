import { expect, test } from "vitest";
import { found } from "./found";

const entries = [
  { topic: "check-grip", name: "Grip", part: "Checks", text: "Whether the turns press on each other, as the slit leaves them." },
  { topic: "operation-slit", name: "Slit the blank", part: "Operations", text: "Leave the bridge." },
  { topic: "word-end-gap", name: "End-gap", part: "Words", text: "The room between the ends." },
];
const topics = (wanted: string): string[] => found(entries, wanted).map((each) => each.topic);

test("what is so called comes before what only speaks of it", () => {
  expect(topics("slit")).toEqual(["operation-slit", "check-grip"]);
});

test("what is called just so comes first", () => {
  const more = [{ topic: "figure-slit", name: "Slit width", part: "Figures", text: "" }, ...entries, { topic: "word-slit", name: "Slit", part: "Words", text: "" }];
  expect(found(more, "slit").map((each) => each.topic)).toEqual(["word-slit", "figure-slit", "operation-slit", "check-grip"]);
});

test("every word counts, by its beginning, whatever its capitals and hyphens", () => {
  expect(topics("GAP end")).toEqual(["word-end-gap"]);
  expect(topics("bri bl")).toEqual(["operation-slit"]);
  expect(topics("lit")).toEqual([]);
  expect(topics("slit gap")).toEqual([]);
});
