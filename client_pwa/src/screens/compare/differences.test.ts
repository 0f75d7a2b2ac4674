import { expect, test } from "vitest";
import type { Answer, Finding } from "../../engine/answers";
import { checksApart, entriesApart, figuresOf } from "./differences";

const figure = (value: number) => ({ value, unit: "mm", symbol: "x", method: "m", working: [] });
const answer = (figures: object): Answer => ({ figures, findings: [], chosen: [], cautions: [] });

test("what is shown alike is alike, and what only one has stands apart", () => {
  const { apart, alike } = figuresOf(
    answer({ free_gap: figure(7.001), closed_gap: figure(0.3), ring_width: figure(2.5) }),
    answer({ free_gap: figure(7.0012), closed_gap: figure(0.5) }),
    "metric",
  );
  expect(alike.map((row) => row.label)).toEqual(["Free gap"]);
  expect(apart.map((row) => [row.left, row.right])).toEqual([
    ["0.300 mm", "0.500 mm"],
    ["2.50 mm", "none"],
  ]);
});

test("entries that count and differ are told in their own words", () => {
  const left = { bore: "80 mm", ring_material: "grey-iron", notes_of_mine: "x", bars: ["a"] };
  const right = { bore: "80 mm", ring_material: "gunmetal", spares: "2" };
  expect(entriesApart(left, right, ["bore", "ring_material", "spares"]).map((row) => [row.left, row.right])).toEqual([
    ["grey iron", "gunmetal"],
    ["not given", "2"],
  ]);
});

test("checks are told where they do not say the same", () => {
  const finding = (check: string, outcome: string) => ({ check, outcome, why: "", remedy: "" }) as Finding;
  const rows = checksApart([finding("too-stiff", "good"), finding("forming", "stop")], [finding("too-stiff", "watch"), finding("forming", "stop")], (one) => one.outcome);
  expect(rows.map((row) => [row.left, row.right])).toEqual([["good", "watch"]]);
});
