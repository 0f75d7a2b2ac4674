import { expect, test } from "vitest";
import type { Figure, Figures } from "../engine/answers";
import { movesBetween } from "./moved";

const mm = (value: number, unit = "mm"): Figure => ({ value, unit, symbol: "", method: "" });

test("the farthest moved comes first, and what did not move is left out", () => {
  const before = { free_gap: mm(10), closed_gap: mm(0.5), ring_width: mm(5) } as Figures;
  const after = { free_gap: mm(11), closed_gap: mm(0.25), ring_width: mm(5) } as Figures;
  const moves = movesBetween(before, after, "metric");
  expect(moves.map((move) => move.name)).toEqual(["closed_gap", "free_gap"]);
  expect(moves.map((move) => move.words)).toEqual(["50 % less", "10 % more"]);
});

test("a change that the screen cannot show is no move", () => {
  expect(movesBetween({ free_gap: mm(10) }, { free_gap: mm(10.000001) }, "metric")).toEqual([]);
});

test("what has all but gone has not gone, and what hardly moved has moved", () => {
  const words = (is: number): string => movesBetween({ free_gap: mm(10) }, { free_gap: mm(is) }, "metric")[0]!.words;
  expect(words(0.03)).toBe("99.7 % less");
  expect(words(10.02)).toBe("0.2 % more");
});

test("temperatures and what was nought have no percentage; what came or went is no move", () => {
  const before = { steam_temperature: mm(100, "degC"), widest_light: mm(0), free_gap: mm(1) } as Figures;
  const after = { steam_temperature: mm(200, "degC"), widest_light: mm(0.1), ring_width: mm(1) } as Figures;
  const moves = movesBetween(before, after, "metric");
  expect(moves.map((move) => [move.name, move.words])).toEqual([
    ["widest_light", ""],
    ["steam_temperature", ""],
  ]);
});
