import { expect, test } from "vitest";
import { LONGEST_SIDE, shrunk } from "./photos";

test("a picture keeps its proportion and grows never", () => {
  expect(shrunk(4000, 3000)).toEqual({ width: LONGEST_SIDE, height: (LONGEST_SIDE * 3) / 4 });
  expect(shrunk(3000, 4000)).toEqual({ width: (LONGEST_SIDE * 3) / 4, height: LONGEST_SIDE });
  expect(shrunk(640, 480)).toEqual({ width: 640, height: 480 });
  expect(shrunk(90_000, 1).height).toBe(1);
});
