import { expect, test } from "vitest";
import type { Choice } from "../engine/answers";
import { parseQuantity } from "../units/parse";
import { remedyOf } from "./remedy";

const EMPTY = { chosen: [], unitOf: () => "mm" };
const asked = (input: string, value: Choice["value"]): Choice[] => [{ input, value, unit: "mm", why: "clears it" }];

test("a gap goes in the unit of its entry, and never short of what clears it", () => {
  for (const [given, unit, step] of [["0.1 mm", "mm", 0.001], ["0.004 in", "in", 0.00254], ["4 thou", "thou", 0.000254]] as const) {
    for (let size = 0.11; size < 3; size += 0.0317) {
      const put = remedyOf(asked("closed_gap", size), "sizing", { closed_gap: given }, EMPTY)!.changes.closed_gap as string;
      expect(put.endsWith(` ${unit}`)).toBe(true);
      const read = parseQuantity("length", put, "");
      const value = read.ok ? read.reading.value : NaN;
      expect(value).toBeGreaterThan(size - 1e-9);
      expect(value).toBeLessThan(size + step * 11);
    }
  }
});

test("what must come down is rounded down", () => {
  const { changes, words } = remedyOf(asked("radial_thickness", 2.4567), "sizing", { radial_thickness: "5 mm" }, EMPTY)!;
  expect(changes).toEqual({ radial_thickness: "2.456 mm" });
  expect(words).toBe("Set radial thickness to 2.456 mm");
});

test("choices and entries left out are said in the words of the screen", () => {
  const apply: Choice[] = [...asked("end_cut", "square"), ...asked("ring_width", null)];
  const { changes, words } = remedyOf(apply, "sizing", { ring_width: "2 mm" }, EMPTY)!;
  expect(changes).toEqual({ end_cut: "square", ring_width: undefined });
  expect(words).toBe("Set ends cut to square and let ring width be chosen");
});

test("a box is ticked, as the screen has it", () => {
  expect(remedyOf(asked("joint_pinned", true), "piston-valve", {}, EMPTY)!.words).toMatch(/^Tick \u201c.*\u201d$/);
});

test("nothing is offered that changes nothing on the sheet", () => {
  expect(remedyOf(asked("end_kerf", null), "sizing", {}, EMPTY)).toBeUndefined();
});
