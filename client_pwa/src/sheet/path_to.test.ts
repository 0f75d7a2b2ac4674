import { expect, it } from "vitest";
import { pathTo } from "./path_to";

it("finds the very figure among others that read alike", () => {
  const gap = { value: 1, unit: "mm" };
  const tree = { figures: { free_gap: { value: 1, unit: "mm" }, closed_gap: gap }, rings: [{ leak: { value: 2, unit: "mm" } }] };
  expect(pathTo(tree, gap)).toEqual(["figures", "closed_gap"]);
  expect(pathTo(tree, tree.rings[0]!.leak)).toEqual(["rings", "0", "leak"]);
  expect(pathTo(tree, { value: 1, unit: "mm" })).toBeUndefined();
});
